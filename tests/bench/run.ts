/** `npm run bench` measures the bot; `npm run bench -- learn` the learned dose, `npm run bench -- room` the local room, `npm run bench -- fairness` what one member's load costs another, `npm run bench -- reminders` the queue of reminders, `npm run bench -- import` bringing a notebook in, `npm run bench -- ask` the look-up of a question, `npm run bench -- plain` a line in plain words, `npm run bench -- round` the keeper's round, `npm run bench -- pots` the buckets that pots are dipped into, `npm run bench -- belief` what is believed of a bucket, `npm run bench -- unlogged` what is found of the water that nobody logged. */
const benches = {
  bot: './bench.ts',
  learn: './learn.ts',
  room: './room.ts',
  fairness: './fairness.ts',
  reminders: './reminders.ts',
  import: './import.ts',
  ask: './ask.ts',
  plain: './plain.ts',
  round: './round.ts',
  pots: './pots.ts',
  belief: './belief.ts',
  unlogged: './unlogged.ts',
};
const [wanted = 'bot'] = process.argv.slice(2).filter((word) => !word.startsWith('--'));
if (wanted === 'bot') await import(benches.bot);
else if (wanted === 'learn') await import(benches.learn);
else if (wanted === 'room') await import(benches.room);
else if (wanted === 'fairness') await import(benches.fairness);
else if (wanted === 'reminders') await import(benches.reminders);
else if (wanted === 'import') await import(benches.import);
else if (wanted === 'ask') await import(benches.ask);
else if (wanted === 'plain') await import(benches.plain);
else if (wanted === 'round') await import(benches.round);
else if (wanted === 'pots') await import(benches.pots);
else if (wanted === 'belief') await import(benches.belief);
else if (wanted === 'unlogged') await import(benches.unlogged);
else {
  console.error(`There is no bench "${wanted}". There are: ${Object.keys(benches).join(', ')}.`);
  process.exitCode = 2;
}
