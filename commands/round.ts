import { asks } from '../src/contract/contract.ts';
import { fromOption } from '../src/contract/kinds/longList.ts';
import { roundItems } from '../src/replies/round/roundItems.ts';
import { roundReply } from '../src/replies/round/roundReply.ts';

export const round = asks({
  name: 'round',
  about: (w) => w.round.about,
  who: 'member',
  options: { from: fromOption },
  run: async (v, asking) => roundReply(await roundItems(asking), asking, v.from),
});
