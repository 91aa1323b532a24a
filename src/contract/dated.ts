import { instant } from '../studio/ids.ts';
import type { Asking, Leaf, Request } from './contract.ts';
import { isoInstant } from '../studio/time/isoInstant.ts';

/** A line that came late, with the time that it is of: put right or pressed again, it is still of then. */
export const dated = async (leaf: Leaf, request: Request, asking: Asking): Promise<Request> => {
  const kind = leaf.options['when']?.kind;
  if (kind?.happened !== true || asking.happenedAt === asking.now) return request;
  const said = request.typed['when'] ?? '';
  const read = said.trim() === '' ? undefined : await kind.read(said, asking);
  if (read?.ok === false) return request;
  const at = typeof read?.value === 'number' ? instant(read.value) : asking.happenedAt;
  return { ...request, typed: { ...request.typed, when: isoInstant(at) } };
};
