/** The page's words about what waits. */
export const roundPageWords = {
  tabs: 'What is shown',
  round: 'Round',
  roundOf: (count: number): string => (count === 0 ? 'Round' : `Round · ${count}`),
  room: 'Room',
  waiting: 'What waits for you',
  standing: (count: number): string =>
    count === 1 ? '1 thing waits for you' : `${count} things wait for you`,
  loading: 'Looking for what there is to do …',
  failed: 'I can’t see what waits: the room does not answer.',
  again: 'Look again',
  close: 'Hide this',
};
