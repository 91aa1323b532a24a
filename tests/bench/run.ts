/** `npm run bench` measures the bot; `npm run bench -- learn` the learned dose. */
const benches = { bot: './bench.js', learn: './learn.js' };
const [wanted = 'bot'] = process.argv.slice(2).filter((word) => !word.startsWith('--'));
if (wanted === 'bot') await import(benches.bot);
else if (wanted === 'learn') await import(benches.learn);
else {
  console.error(`There is no bench "${wanted}". There are: ${Object.keys(benches).join(', ')}.`);
  process.exitCode = 2;
}
