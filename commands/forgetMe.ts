import { logs, optional, refusal, toRun } from '../src/contract/contract.ts';
import { yesNo } from '../src/contract/kinds/picks.ts';
import { stampNow } from '../src/contract/entryStamp.ts';

export const forgetMe = logs({
  name: 'forget-me',
  about: (w) => w.people.forget.about,
  who: 'member',
  private: true,
  options: { sure: optional(yesNo, (w) => w.people.forget.sure) },
  async run(v, { words, book, now, member }) {
    const w = words.people.forget;
    const { keepers } = await book.studio();
    const isKeeper = keepers.includes(member);
    if (isKeeper && keepers.length === 1) return refusal(w.onlyKeeper);
    if (v.sure !== true)
      return {
        kind: 'answer',
        title: w.ask,
        facts: [
          { label: [w.factGoes], text: w.goes },
          { label: [w.factStays], text: w.stays },
        ],
        reasons: [[w.others]],
        actions: [toRun(w.press, '/forget-me sure:yes')],
        data: { forgotten: false },
      };
    const logged = stampNow({ now, member });
    if (isKeeper) await book.logStudio({ kind: 'keeper', member, keeper: false }, logged);
    // The member is gone, so nobody is left to tell when these coats are dry.
    for (const { seq, by, disowned } of await book.coats())
      if (by === member && !disowned) await book.logCoat({ kind: 'not-mine', of: seq }, logged);
    await book.forget(member);
    return { kind: 'answer', title: w.done, reasons: [w.later], data: { forgotten: true } };
  },
});
