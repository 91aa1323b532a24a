import { asks } from '../../src/contract/contract.ts';
import { studioCard } from '../../src/replies/studio/studioCard.ts';

export const showStudio = asks({
  name: 'show',
  about: (w) => w.studio.show,
  who: 'member',
  options: {},
  run: async (_values, asking) => studioCard(await asking.book.studio(), asking),
});
