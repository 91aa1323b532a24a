import { said, t, type Text } from '../text/text.ts';

export const deskWords = {
  noCommand: (typed: string, near?: string): Text =>
    near === undefined
      ? t`There is no command “${said(typed)}”. /help lists the commands by job.`
      : t`There is no command “${said(typed)}”. Did you mean /${[near]}? /help lists the commands by job.`,
  keepersOnly: (path: string): Text => t`/${[path]} is for keepers. Ask one. Nothing was changed.`,
  unknownOption: (name: string, have: string[]): Text =>
    t`“${said(name)}” is not an option here. The options are ${[have.join(', ')]}.`,
  missing: (name: string, about: string, example: string): Text =>
    t`${[name]} is missing (${[about]}). Type it like ${[`${name}:${/\s/.test(example) ? `"${example}"` : example}`]}.`,
  /** What was typed begins with a known one; the rest belongs to other options. */
  restNeedsOptions: (known: string, rest: string, options: string[]): Text =>
    t`${said(known)} is a bucket. Put an option name before “${said(rest)}”, such as ${[options.join(' ')]}.`,
  wrong: (name: string, why: Text): Text => t`${[name]}: ${why}`,
  more: t`More`,
  from: 'The row to start the list from',
  then: 'The recipe’s line to go on with',
  thenRecipe: t`Only a recipe’s line can follow, such as /batch plan. Leave then: out.`,
  broken: (id: string): Text =>
    t`Something went wrong here. It was not your fault, and nothing was saved. Give a keeper this number: ${[id]}.`,
  trouble: {
    full: t`The logbook’s disk is full, so nothing was saved. Tell whoever runs the bot. Once there is room, send it again.`,
    unreachable: t`The logbook cannot be reached right now. In a minute, see in the log whether this was saved, and send it again if not.`,
    crowded: t`The bot is too busy right now, so nothing was saved. Send it again in a moment.`,
  },
  enoughToday: (most: number): Text =>
    t`You have logged ${[String(most)]} entries today, the most that one member can. This was not saved; log it tomorrow.`,
  movedOn: (fresh: Text): Text => t`Not logged: somebody changed the bucket in the meantime. ${fresh}`,
  neverLogged: (name: string, after: number, last: number): Text =>
    t`${said(name)} has no entry ${after}: its log ends at ${last}. Leave after: out. Nothing was saved.`,
  forgotten: t`The bot has forgotten whoever sent that. Nothing was saved. Send it again to start as somebody new.`,
  shownOnce: t`This was shown once and is not kept. Ask for it again.`,
  logAnyway: t`Log it anyway`,
  line: {
    empty: t`Type a command, such as /water-or-stir bucket:"Gull Grey". /help lists the commands by job.`,
    needsLeaf: (group: string, leaves: string[]): Text =>
      t`/${[group]} needs one of these after it: ${[leaves.join(', ')]}.`,
    twice: (option: string): Text => t`${[option]} is there twice. Type it once.`,
    unknownOption: (typed: string, near: string): Text =>
      t`“${said(typed)}:” is not an option here. Did you mean ${[near]}:? Nothing was saved.`,
    noOption: (path: string[], typed: string, have: string[]): Text =>
      t`/${[path.join(' ')]} has no “${said(typed)}:”. It takes ${[have.map((name) => `${name}:`).join(', ')]}.`,
    loose: (text: string): Text =>
      t`I don't know what “${said(text)}” belongs to. Options look like bucket:"Gull Grey".`,
  },
};
