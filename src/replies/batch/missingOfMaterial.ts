import { refusal, type Reply } from '../../contract/contract.ts';
import type { Words } from '../../words/words.ts';

/** What is still to be said of a material. */
export const missingOfMaterial = (
  name: string,
  what: 'hazards' | 'soluble' | 'gravity',
  { recipe: w }: Words,
): Reply =>
  refusal(
    what === 'hazards' ? w.sayHazard(name) : what === 'soluble' ? w.saySoluble(name) : w.sayGravity(name),
  );
