import type { Log } from '../../contract/log.ts';
import { forLog } from '../failure.ts';
import type { Delivery } from './retry.ts';
import type { Rendered } from '../render/renderReply.ts';
import type { InteractionResponder } from './interactionResponder.ts';

interface How {
  /** The same without its trimmings, for a platform that refuses them. */
  bare: Rendered;
  hidden: boolean;
  /** It answers a button that has done its work. */
  pressed: boolean;
  /** A reply was announced already, for everybody to see or for its author alone. */
  promised?: 'shown' | 'hidden';
}

/** Gives a reply to an interaction by the first way that is open; what is refused by one way is tried by the next. */
export const deliver = async (
  log: Log,
  answers: InteractionResponder,
  message: Rendered,
  { bare, hidden, pressed, promised }: How,
): Promise<Delivery> => {
  for (const way of ways(answers, message, { bare, hidden, pressed, ...(promised && { promised }) })) {
    try {
      return await way();
    } catch (error) {
      log.error(forLog(error), 'Discord refused a reply');
    }
  }
  return 'lost';
};

type Way = () => Promise<Delivery>;

const ways = (
  answers: InteractionResponder,
  message: Rendered,
  { bare, hidden, pressed, promised }: How,
): Way[] => {
  const after = [message, bare].map((one) => () => answers.followUp(one, hidden));
  if (promised !== undefined) {
    if ((promised === 'hidden') === hidden) return [() => answers.fill(message), ...after];
    return [() => instead(answers, message, hidden), ...after];
  }
  const at = [message, bare].map((one) => () => answers.answer(one, hidden));
  // What was pressed may be deleted by now: then it is answered like anything else.
  return pressed ? [() => closing(answers, after), ...at] : at;
};

/** A message cannot turn from public to hidden: it is taken away, and another one comes. */
const instead = async (
  answers: InteractionResponder,
  message: Rendered,
  hidden: boolean,
): Promise<Delivery> => {
  await answers.withdraw().catch(() => undefined);
  return answers.followUp(message, hidden);
};

/** A button says what was done: pressed once, it must not stay to be pressed again. */
const closing = async (answers: InteractionResponder, [first, ...others]: Way[]): Promise<Delivery> => {
  const closed = await answers.closePressed();
  if (closed !== 'told' || first === undefined) return closed;
  // The interaction is answered by now: only what follows it is left.
  return others.reduce<Promise<Delivery>>((told, way) => told.catch(way), first()).catch(() => 'lost');
};
