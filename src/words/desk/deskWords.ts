import { said, t, type Text } from '../text/text.ts';

export const deskWords = {
  noCommand: (typed: string, near?: string): Text =>
    near === undefined
      ? t`There is no command “${said(typed)}”. /help shows them by job.`
      : t`There is no command “${said(typed)}”. Did you mean /${[near]}? /help shows them by job.`,
  keepersOnly: (path: string): Text => t`/${[path]} is for keepers. Ask one; nothing was changed.`,
  unknownOption: (name: string, have: string[]): Text =>
    t`“${said(name)}” is not an option here. There are: ${[have.join(', ')]}.`,
  missing: (name: string, about: string, example: string): Text =>
    t`${[name]} is missing. ${[about]}: type it like ${[`${name}:${/\s/.test(example) ? `"${example}"` : example}`]}.`,
  /** What was typed begins with a known one; the rest belongs to other options. */
  restNeedsOptions: (known: string, rest: string, options: string[]): Text =>
    t`${said(known)} is a bucket; “${said(rest)}” after it needs its options, like ${[options.join(' ')]}.`,
  wrong: (name: string, why: Text): Text => t`${[name]}: ${why}`,
  more: ['More'] as Text,
  from: 'The row that the list begins with',
  broken: (id: string): Text =>
    t`Something went wrong here, and it was not you. Nothing was saved. Give a keeper this number: ${[id]}.`,
  movedOn: (fresh: Text): Text => t`Not logged: somebody acted on it meanwhile. ${fresh}`,
  neverLogged: (name: string, after: number, last: number): Text =>
    t`${said(name)} has no entry ${after}: its log ends at ${last}. Leave after: out. Nothing was saved.`,
  forgotten: [
    'That came from somebody whom the bot has forgotten since. Nothing was saved; say it again to begin anew.',
  ] as Text,
  shownOnce: ['What stood here was shown once and is kept nowhere. Ask for it anew.'] as Text,
  logAnyway: (): Text => ['Log it anyway'],
  line: {
    empty: (): Text => [
      'Type a command, such as /water-or-stir bucket:"Gull Grey". /help shows them by job.',
    ],
    needsLeaf: (group: string, leaves: string[]): Text =>
      t`/${[group]} needs one of these after it: ${[leaves.join(', ')]}.`,
    twice: (option: string): Text => t`${[option]} is there twice. Say it once.`,
    unknownOption: (typed: string, near: string): Text =>
      t`“${said(typed)}:” is no option here. Did you mean ${[near]}:? Nothing was saved.`,
    noOption: (path: string[], typed: string, have: string[]): Text =>
      t`/${[path.join(' ')]} has no “${said(typed)}:”. It takes ${[have.map((name) => `${name}:`).join(', ')]}.`,
    loose: (text: string): Text => t`I can't place “${said(text)}”. Options look like bucket:"Gull Grey".`,
  },
};
