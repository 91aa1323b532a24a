import { SnowflakeUtil, type APIInteraction } from 'discord.js';
import type { Leaf, Reply, Request } from '../../contract/contract.ts';
import type { ParsedLine } from '../../contract/parseLine.ts';
import { discordWords } from '../../words/platform/discordWords.ts';
import type { Bot } from '../bot.ts';
import { deliver } from './deliver.ts';
import { forLog } from '../failure.ts';
import type { Who } from './identify.ts';
import { type Rendered, bareReply, renderReply } from '../render/renderReply.ts';
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
  /** What a repeat of the same act shares: the interaction itself, or the button or form that it came from. */
  key: string;
}

/** Runs a command and sees to it that its reply gets to whoever used it. */
export const answerCommand = async (bot: Bot, used: Used): Promise<void> => {
  const { interaction, leaf } = used;
  const { log } = bot.ports;
  const answers = interactionResponder(bot, interaction);
  const secret = leaf.effect === 'asks' || leaf.private === true;
  const announce = leaf.slow === true || isOld(bot, interaction);
  // Unless the platform still waits for an answer, nothing is run: whoever saw it fail will try again.
  if (announce && (await answers.defer(secret)) !== 'told') return;
  const working = run(bot, used);
  const early = announce ? undefined : await within(SOON, working);
  const deferred = announce || (early === undefined && (await announced(bot, answers, secret)));
  const reply = early ?? (await working);
  const hidden = reply.private ?? (secret || reply.kind !== 'answer');
  const logged = leaf.effect === 'logs' && reply.kind === 'answer';
  const message = await rendered(bot, used, reply);
  const told = await deliver(log, answers, message, {
    bare: bareReply(reply),
    hidden,
    pressed: logged && interaction.message !== undefined,
    ...(deferred && { promised: secret ? 'hidden' : 'shown' }),
  });
  if (told === 'told') return tellRest(bot, answers, message, hidden);
  log.warn({ interaction: interaction.id, told }, 'a reply did not get through');
  if (logged) await notifyLate(bot, interaction, [message, bareReply(reply)], hidden);
};

/** What did not fit comes in messages of its own. */
const tellRest = async (
  { ports }: Bot,
  answers: InteractionResponder,
  { rest }: Rendered,
  hidden: boolean,
): Promise<void> => {
  try {
    for (const content of rest)
      await answers.followUp({ content, rest: [], components: [], attachments: [], files: [] }, hidden);
  } catch (error) {
    ports.log.error(forLog(error), 'could not tell the rest of a reply');
  }
};

/** While a command is being carried out nothing may lose what comes of it, a failed announcement least of all. */
const announced = async (
  { ports }: Bot,
  answers: InteractionResponder,
  secret: boolean,
): Promise<boolean> => {
  try {
    return (await answers.defer(secret)) === 'told';
  } catch (error) {
    ports.log.warn(forLog(error), 'could not announce a reply');
    return false;
  }
};

/** What was logged is told without its trimmings, should they not be to be had. */
const rendered = async ({ ports }: Bot, { interaction, who }: Used, reply: Reply): Promise<Rendered> => {
  try {
    const direct = interaction.guild_id === undefined;
    return await renderReply(reply, { studio: who.studio, direct }, ports);
  } catch (error) {
    ports.log.error({ ...forLog(error), interaction: interaction.id }, 'could not put a reply together');
    return bareReply(reply);
  }
};

/** A replay after a broken connection may come when the platform has given up; clocks differ, so this is only a hint. */
const isOld = ({ ports }: Bot, { id }: APIInteraction): boolean =>
  ports.clock.now() - SnowflakeUtil.timestampFrom(id) > SOON;

/** The desk's reply; a bug gets a calm one with an id to find it by. */
const run = async ({ ports }: Bot, { interaction, who, line, key }: Used): Promise<Reply> => {
  const request: Request = { ...who, ...line, key, now: ports.clock.now() };
  try {
    return await ports.desk.dispatch(request);
  } catch (error) {
    ports.log.error({ ...forLog(error), interaction: interaction.id }, 'a command broke');
    return { kind: 'error', title: [discordWords.broken(interaction.id)], data: {} };
  }
};
