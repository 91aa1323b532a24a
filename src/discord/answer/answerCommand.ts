import { SnowflakeUtil, type APIInteraction } from 'discord.js';
import type { Leaf, Reply, Request } from '../../contract/contract.ts';
import type { ParsedLine } from '../../contract/parseLine.ts';
import { discordWords } from '../../words/platform/discordWords.ts';
import { forLog } from '../failure.ts';
import type { Bot } from '../bot.ts';
import type { Who } from './identify.ts';
import type { Delivery } from './retry.ts';
import { markdownWithin } from '../render/markdown.ts';
import { type Rendered, renderReply } from '../render/renderReply.ts';
import { notifyLate } from './notifyLate.ts';
import { interactionResponder, type InteractionResponder } from './interactionResponder.ts';
import { within } from './within.ts';

/** Half of the time that the platform waits: what takes longer is announced. */
const SOON = 1_500;

/** A command that somebody used, typed or pressed. */
export interface Used {
  interaction: APIInteraction;
  who: Who;
  line: ParsedLine;
  leaf: Leaf;
}

/** Runs a command and sees to it that its reply gets to whoever used it. */
export const answerCommand = async (bot: Bot, used: Used): Promise<void> => {
  const { interaction, leaf } = used;
  const answers = interactionResponder(bot, interaction);
  const secret = leaf.effect === 'asks' || leaf.private === true;
  const announce = leaf.slow === true || isOld(bot, interaction);
  // Unless the platform still waits for an answer, nothing is run: whoever saw it fail will try again.
  if (announce && (await answers.defer(secret)) !== 'told') return;
  const working = run(bot, used);
  const early = announce ? undefined : await within(SOON, working);
  const deferred = announce || (early === undefined && (await answers.defer(secret)) === 'told');
  const reply = early ?? (await working);
  const hidden = reply.private ?? (secret || reply.kind !== 'answer');
  const message = await renderReply(reply, placeOf(used), bot.ports);
  const give = (shown: Rendered): Promise<Delivery> =>
    deferred ? fill(answers, shown, secret, hidden) : answer(answers, used, reply, shown, hidden);
  let told: Delivery;
  try {
    told = await give(message);
  } catch (error) {
    bot.ports.log.error({ ...forLog(error), interaction: interaction.id }, 'Discord refused a reply');
    told = await give(bare(reply));
  }
  if (told === 'told') return;
  bot.ports.log.warn({ interaction: interaction.id, told }, 'a reply did not get through');
  if (leaf.effect === 'logs' && reply.kind === 'answer') await notifyLate(bot, interaction, message, hidden);
};

/** A replay after a broken connection may come when the platform has given up; clocks differ, so this is only a hint. */
const isOld = ({ ports }: Bot, { id }: APIInteraction): boolean =>
  ports.clock.now() - SnowflakeUtil.timestampFrom(id) > SOON;

const placeOf = ({ interaction, who }: Used) => ({
  studio: who.studio,
  direct: interaction.guild_id === undefined,
});

/** The desk's reply; a bug gets a calm one with an id to find it by. */
const run = async ({ ports }: Bot, { interaction, who, line }: Used): Promise<Reply> => {
  const request: Request = { ...who, ...line, key: `discord:${interaction.id}`, now: ports.clock.now() };
  try {
    return await ports.desk.dispatch(request);
  } catch (error) {
    ports.log.error({ ...forLog(error), interaction: interaction.id }, 'a command broke');
    return { kind: 'error', title: [discordWords.broken(interaction.id)], data: {} };
  }
};

const answer = async (
  answers: InteractionResponder,
  { interaction, leaf }: Used,
  reply: Reply,
  message: Rendered,
  hidden: boolean,
): Promise<Delivery> => {
  const done = leaf.effect === 'logs' && reply.kind === 'answer';
  if (!done || interaction.message === undefined) return answers.answer(message, hidden);
  // A button says what was done: pressed once, it must not stay to be pressed again.
  const closed = await answers.closePressed();
  return closed === 'told' ? answers.followUp(message, hidden) : closed;
};

/** A message cannot turn from public to hidden: it is taken away, and another one comes. */
const fill = async (
  answers: InteractionResponder,
  message: Rendered,
  promised: boolean,
  hidden: boolean,
): Promise<Delivery> => {
  if (promised === hidden) return answers.fill(message);
  await answers.withdraw();
  return answers.followUp(message, hidden);
};

const bare = (reply: Reply): Rendered => ({
  content: markdownWithin(reply.title, 1_000),
  components: [],
  attachments: [],
  files: [],
});
