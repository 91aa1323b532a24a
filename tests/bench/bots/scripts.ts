import { slash } from '../../helpers/discord/discordInteraction.ts';
import type { BenchBot } from '../benchBot.ts';
import type { Script } from '../load.ts';

const bucketName = (n: number): string => `Bench Glaze ${(n % 10) + 1}`;

export const reading: Script = (member, n) =>
  slash(member, ['reading'], {
    bucket: bucketName(n),
    gravity: (1.42 + (n % 7) / 100).toFixed(2),
    seconds: String(12 + (n % 5)),
    stirred: true,
  });

export const question: Script = (member, n) => slash(member, ['water-or-stir'], { bucket: bucketName(n) });

/** Sets up the ten buckets that the scripts speak of. */
export const fillStudio = async (bot: BenchBot): Promise<void> => {
  const keeper = { by: bot.discord.person('keeper', { manages: true }), channel: bot.discord.channel() };
  const must = async (what: string, used: ReturnType<BenchBot['use']>): Promise<void> => {
    const { interaction } = await used;
    const answered = JSON.stringify(interaction.acknowledged);
    // On a slow machine the answer comes after a deferral.
    const deferred = answered.includes('"type":5');
    if (!deferred && !answered.includes('"flags":4,')) throw new Error(`${what} was refused: ${answered}`);
  };
  for (let n = 0; n < 10; n += 1) {
    const wanted = { name: bucketName(n), pail: '19l', volume: '15l', gravity: '1.42-1.46' };
    const draft = slash(keeper, ['bucket', 'add'], { ...wanted, seconds: '12-16', cup: 'ford4' });
    await must('a bucket', bot.use(draft));
  }
  await must('a reading', bot.use(reading(keeper, 0)));
};
