import { instant } from '../studio/ids.ts';
import type { Asking, Leaf } from './contract.ts';
import type { Request } from './desk.ts';
import { isoInstant } from '../studio/time/isoInstant.ts';

/** The option that says when what is logged was done. */
export const whenOption = (leaf: Leaf): string | undefined =>
  Object.entries(leaf.options).find(([, { kind }]) => kind.happened === true)?.[0];

/** Puts the original time into a line that arrived late, so that correcting or pressing it again keeps that time. */
export const withOriginalTime = async (leaf: Leaf, request: Request, asking: Asking): Promise<Request> => {
  const name = whenOption(leaf);
  const kind = name === undefined ? undefined : leaf.options[name]?.kind;
  if (name === undefined || !kind || asking.happenedAt === asking.now) return request;
  const said = request.typed[name] ?? '';
  const read = said.trim() === '' ? undefined : await kind.read(said, asking);
  if (read?.ok === false) return request;
  const at = typeof read?.value === 'number' ? instant(read.value) : asking.happenedAt;
  return { ...request, typed: { ...request.typed, [name]: isoInstant(at) } };
};
