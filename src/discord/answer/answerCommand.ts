import { SnowflakeUtil, type APIInteraction } from 'discord.js';
import type { Leaf, Reply } from '../../contract/contract.ts';
import type { Request } from '../../contract/desk.ts';
import type { ParsedLine } from '../../contract/parseLine.ts';
import { discordWords } from '../../words/platform/discordWords.ts';
import type { Bot } from '../bot.ts';
import { deliver } from './deliver.ts';
import { forLog } from '../failure.ts';
import type { Who } from './identify.ts';
import { type Rendered, bareReply, renderReply, textAlone } from '../render/renderReply.ts';
import { notifyLate } from './notifyLate.ts';
import { interactionResponder, type InteractionResponder } from './interactionResponder.ts';
import { within } from './within.ts';

/** Half of Discord's three seconds: a command that takes longer is deferred. */
const SOON = 1_500;

/** A command that somebody typed, or pressed as a button. */
export interface Used {
  interaction: APIInteraction;
  who: Who;
  line: ParsedLine;
  leaf: Leaf;
  /** The idempotency key: the interaction's id, or that of the button or form that it came from. */
  key: string;
}

export const answerCommand = async (bot: Bot, used: Used): Promise<void> => {
  const { interaction, leaf } = used;
  const { log } = bot.ports;
  const answers = interactionResponder(bot, interaction);
  const secret = leaf.effect === 'asks' || leaf.private === true;
  const announce = leaf.slow === true || isOld(bot, interaction);
  // If the interaction has expired, the command is not run: its member saw it fail, and will try again.
  if (announce && (await answers.defer(secret)) !== 'told') return;
  const working = run(bot, used);
  const early = announce ? undefined : await within(SOON, working);
  const deferred = announce || (early === undefined && (await deferReply(bot, answers, secret)));
  const reply = early ?? (await working);
  const hidden = reply.private ?? (secret || reply.kind !== 'answer');
  const logged = leaf.effect === 'logs' && reply.kind === 'answer';
  const message = await rendered(bot, used, reply);
  const told = await deliver(log, answers, message, {
    bare: () => bareReply(reply),
    hidden,
    pressed: logged && interaction.message !== undefined,
    promised: deferred ? (secret ? 'hidden' : 'shown') : undefined,
  });
  if (told === 'told') return tellRest(bot, answers, message, hidden);
  log.warn({ interaction: interaction.id, told }, 'a reply did not get through');
  if (logged) await notifyLate(bot, interaction, [message, bareReply(reply)], hidden);
};

const tellRest = async (
  { ports }: Bot,
  answers: InteractionResponder,
  { rest }: Rendered,
  hidden: boolean,
): Promise<void> => {
  try {
    for (const content of rest) await answers.followUp(textAlone(content), hidden);
  } catch (error) {
    ports.log.error(forLog(error), 'could not tell the rest of a reply');
  }
};

/** Defers the reply. A failed deferral must not lose the result of the command that is running. */
const deferReply = async (
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

/** If rendering the whole reply fails, the bare text is sent: what was logged must be reported. */
const rendered = async ({ ports }: Bot, { interaction, who }: Used, reply: Reply): Promise<Rendered> => {
  try {
    const direct = interaction.guild_id === undefined;
    return await renderReply(reply, { studio: who.studio, direct }, ports);
  } catch (error) {
    ports.log.error({ ...forLog(error), interaction: interaction.id }, 'could not put a reply together');
    return bareReply(reply);
  }
};

/** After a reconnect Discord may replay an expired interaction. Clocks differ, so this is only a hint. */
const isOld = ({ ports }: Bot, { id }: APIInteraction): boolean =>
  ports.clock.now() - SnowflakeUtil.timestampFrom(id) > SOON;

/** Runs the command. A bug becomes a reply with an id to find it by in the log. */
const run = async ({ ports }: Bot, { interaction, who, line, key }: Used): Promise<Reply> => {
  const request: Request = { ...who, ...line, key, now: ports.clock.now() };
  try {
    return await ports.desk.dispatch(request);
  } catch (error) {
    ports.log.error({ ...forLog(error), interaction: interaction.id }, 'a command broke');
    return { kind: 'error', title: [discordWords.broken(interaction.id)], data: {} };
  }
};
