import { definedOnly } from '../src/definedOnly.ts';
import { logs, optional } from '../src/contract/contract.ts';
import { entryStamp } from '../src/contract/entryStamp.ts';
import { number } from '../src/contract/kinds/quantities.ts';
import { bucketOption, whenAndNote } from '../src/contract/kinds/usualOptions.ts';
import { verdictReply } from '../src/replies/verdict/verdictReply.ts';

export const sieved = logs({
  name: 'sieved',
  about: (w) => w.sieved.about,
  who: 'member',
  options: {
    bucket: bucketOption,
    mesh: optional(number(10, 500, '80'), (w) => w.sieved.mesh),
    ...whenAndNote,
  },
  async run(v, context) {
    const { words, book } = context;
    const { mesh: own } = v.bucket.settings;
    const { state, entry } = await book.log(
      v.bucket.no,
      { kind: 'sieve', ...definedOnly({ mesh: v.mesh }) },
      entryStamp(context, v),
    );
    return verdictReply(state, context, {
      entry,
      reasons: [
        ...(own === 'never' ? [words.sieved.never] : []),
        ...(own !== 'never' && v.mesh !== undefined && v.mesh !== own
          ? [words.sieved.otherMesh(v.mesh, own)]
          : []),
      ],
    });
  },
});
