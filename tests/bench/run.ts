/** `npm run bench` measures the bot; `npm run bench -- NAME` one of the others. */
const benches: Record<string, () => Promise<unknown>> = {
  bot: () => import('./bench.ts'),
  /** The learned dose. */
  learn: () => import('./learn.ts'),
  room: () => import('./room.ts'),
  /** What one member's load costs another. */
  fairness: () => import('./fairness.ts'),
  /** The queue of reminders. */
  reminders: () => import('./reminders.ts'),
  /** Bringing a notebook in. */
  import: () => import('./import.ts'),
  /** The look-up of a question. */
  ask: () => import('./ask.ts'),
  /** A line in plain words. */
  plain: () => import('./plain.ts'),
  /** The keeper's round. */
  round: () => import('./round.ts'),
  /** The buckets that pots are dipped into. */
  pots: () => import('./pots.ts'),
  /** What is believed of a bucket. */
  belief: () => import('./belief.ts'),
  /** What is found of the water that nobody logged. */
  unlogged: () => import('./unlogged.ts'),
  /** Many studios in one file. */
  scale: () => import('./scale.ts'),
};
const [wanted = 'bot'] = process.argv.slice(2).filter((word) => !word.startsWith('--'));
const bench = benches[wanted];
if (bench) await bench();
else {
  console.error(`There is no bench "${wanted}". There are: ${Object.keys(benches).join(', ')}.`);
  process.exitCode = 2;
}
