import type { Log } from '../../contract/log.ts';
import { forLog } from '../failure.ts';
import type { Delivery } from './retry.ts';
import type { Rendered } from '../render/renderReply.ts';
import type { InteractionResponder } from './interactionResponder.ts';

interface How {
  /** A plain version, for when Discord rejects the full one. */
  bare: () => Rendered;
  hidden: boolean;
  /** Whether it replaces the message of a pressed button. */
  pressed: boolean;
  /** The reply was deferred: visible to everybody, or only to its author. */
  promised: 'shown' | 'hidden' | undefined;
}

/** Delivers a reply in the first way that works: the next one is tried when Discord rejects one. */
export const deliver = async (
  log: Log,
  answers: InteractionResponder,
  message: Rendered,
  how: How,
): Promise<Delivery> => {
  for (const way of ways(answers, message, how)) {
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
  const either = [() => message, bare];
  const after = either.map((one) => () => answers.followUp(one(), hidden));
  if (promised !== undefined) {
    if ((promised === 'hidden') === hidden) return [() => answers.fill(message), ...after];
    return [() => replacePressed(answers, message, hidden), ...after];
  }
  const at = either.map((one) => () => answers.answer(one(), hidden));
  // The pressed message may be deleted: then a new reply is sent.
  return pressed ? [() => withButtonsRemoved(answers, after), ...at] : at;
};

/** A message cannot change from public to ephemeral, so it is deleted and a new one is sent. */
const replacePressed = async (
  answers: InteractionResponder,
  message: Rendered,
  hidden: boolean,
): Promise<Delivery> => {
  await answers.withdraw().catch(() => undefined);
  return answers.followUp(message, hidden);
};

/** Removes the buttons from a pressed message, so that nobody presses them twice. */
const withButtonsRemoved = async (
  answers: InteractionResponder,
  [first, ...others]: Way[],
): Promise<Delivery> => {
  const closed = await answers.closePressed();
  if (closed !== 'told' || first === undefined) return closed;
  // The interaction is answered by now, so only follow-ups are left.
  return others.reduce<Promise<Delivery>>((told, way) => told.catch(way), first()).catch(() => 'lost');
};
