import { type Fields, list, text } from './discordBody.ts';

const NAME = /^[-_'\p{L}\p{N}\p{sc=Deva}\p{sc=Thai}]{1,32}$/u;
const MESSAGE = 3;
const SUBCOMMANDS = new Set([1, 2]);

/** Discord's rules for commands that its published schemas leave out. */
export const commandProblems = (commands: Fields[]): string[] => {
  const problems: string[] = [];
  if (commands.length > 100) problems.push(`${commands.length} commands: at most 100`);
  problems.push(...repeated(commands, 'command'));
  for (const command of commands) {
    const where = `/${text(command['name'])}`;
    if (command['type'] === MESSAGE) {
      problems.push(...inMenu(command, where));
      continue;
    }
    problems.push(...named(command, where), ...options(command, where));
    const size = characters(command);
    if (size > 8000) problems.push(`${where}: ${size} characters in all, at most 8000`);
  }
  return problems;
};

/** A command in a message's menu has a name of 1 to 32 characters of any kind, and nothing else. */
const inMenu = (command: Fields, where: string): string[] => [
  ...(/^.{1,32}$/u.test(text(command['name'])) ? [] : [`${where}: a menu's name has 1 to 32 characters`]),
  ...(text(command['description']) === '' && list(command['options']).length === 0
    ? []
    : [`${where}: a menu's command has neither description nor options`]),
];

const named = (one: Fields, where: string): string[] => {
  const problems: string[] = [];
  const name = text(one['name']);
  if (!NAME.test(name)) problems.push(`${where}: "${name}" is no command or option name`);
  if (name !== name.toLowerCase()) problems.push(`${where}: "${name}" has upper-case letters`);
  const description = text(one['description']);
  if (description.length < 1 || description.length > 100)
    problems.push(`${where}: a description has 1 to 100 characters, this one ${description.length}`);
  return problems;
};

const options = (parent: Fields, where: string): string[] => {
  const own = list(parent['options']);
  const problems = repeated(own, `option of ${where}`);
  if (own.length > 25) problems.push(`${where}: ${own.length} options, at most 25`);
  const kinds = new Set(own.map((option) => SUBCOMMANDS.has(Number(option['type']))));
  if (kinds.size > 1) problems.push(`${where}: subcommands and plain options together`);
  let optionalSeen = false;
  for (const option of own) {
    const at = `${where} ${text(option['name'])}`;
    problems.push(...named(option, at), ...options(option, at));
    if (option['required'] === true && optionalSeen) problems.push(`${at}: required after optional`);
    if (option['required'] !== true) optionalSeen = true;
    const choices = list(option['choices']);
    problems.push(...repeated(choices, `choice of ${at}`));
    if (choices.length > 25) problems.push(`${at}: ${choices.length} choices, at most 25`);
    if (choices.length > 0 && option['autocomplete'] === true)
      problems.push(`${at}: choices and autocomplete together`);
  }
  return problems;
};

const repeated = (items: Fields[], what: string): string[] => {
  const names = items.map((item) => text(item['name']));
  return [...new Set(names.filter((name, i) => names.indexOf(name) !== i))].map(
    (name) => `"${name}" is the name of more than one ${what}`,
  );
};

/**
 * The characters that count towards Discord's limit of 8000: names, descriptions and choice values of a command and
 * everything below it.
 */
const characters = (one: Fields): number =>
  text(one['name']).length +
  text(one['description']).length +
  text(one['value']).length +
  [...list(one['options']), ...list(one['choices'])].reduce((sum, part) => sum + characters(part), 0);
