import { present } from '../../present.ts';
import type { WindowProposal } from '../../studio/firing/proposeWindow.ts';
import { gravityText, secondsWindowText, windowText } from '../text/measures.ts';
import { t, type Text } from '../text/text.ts';

const windows = ({ gravity, efflux }: WindowProposal): string =>
  present([gravity && windowText(gravity), efflux && secondsWindowText(efflux)]).join(' and ');

/** The press by which a keeper sets a window. */
export const isRightText = (proposal: WindowProposal): Text => {
  const { right, gravity, efflux, from } = proposal;
  if (!gravity) return t`These seconds are right: ${[efflux ? secondsWindowText(efflux) : '']}`;
  const both = `${windowText(gravity)}${efflux ? `, ${secondsWindowText(efflux)}` : ''}`;
  return from === 'reading'
    ? t`This is right: ${[gravityText(right ?? gravity.low)]}, window ${[both]}`
    : t`Set its window: ${[both]}`;
};

/** What a keeper of a bucket without a window is asked. */
export const proposedTitle = (proposal: WindowProposal): Text => {
  const { from, right, gravity, count } = proposal;
  if (!gravity || right === undefined)
    return t`No window of seconds is set. Is it right as it runs now? Then its window is ${[windows(proposal)]}.`;
  const at = gravityText(right);
  switch (from) {
    case 'fired':
      return t`No window is set. ${[count === 1 ? 'A piece that came out well was' : 'Pieces that came out well were']} dipped at ${[at]}: make its window ${[windows(proposal)]}.`;
    case 'tiles':
      return t`No window is set. ${[count === 1 ? 'Its test tile was' : 'Its test tiles were']} dipped at ${[at]}: if the coat was right, make its window ${[windows(proposal)]}.`;
    case 'reading':
      return t`It reads ${[at]}, and no window is set. If it coats right, its window is ${[windows(proposal)]}.`;
  }
};
