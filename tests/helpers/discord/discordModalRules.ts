import { ComponentType } from 'discord.js';
import { type Fields, list, text } from './discordBody.ts';
import { customIdProblems, everyComponent, selectProblems } from './discordMessageRules.ts';

/** Discord's rules for forms that its published schemas leave out. */
export const modalProblems = (data: Fields): string[] => {
  const problems: string[] = [];
  const rows = list(data['components']);
  if (rows.length < 1 || rows.length > 5)
    problems.push(`a form has 1 to 5 components, this one ${rows.length}`);
  const all = everyComponent(rows);
  problems.push(...customIdProblems(all));
  for (const one of all) {
    if (one['type'] === ComponentType.TextInput) problems.push(...textInputProblems(one, rows));
    if (one['type'] === ComponentType.StringSelect) problems.push(...selectProblems(one));
  }
  return problems;
};

const textInputProblems = (one: Fields, rows: Fields[]): string[] => {
  const problems: string[] = [];
  const value = text(one['value']);
  const most = Number(one['max_length'] ?? 4000);
  if (value.length > most) problems.push(`${value.length} characters filled in where ${most} fit`);
  if (Number(one['min_length'] ?? 0) > most) problems.push('min_length over max_length');
  const inLabel = rows.some((row) => row['type'] === ComponentType.Label && row['component'] === one);
  if (inLabel === (text(one['label']) !== ''))
    problems.push('a text input is named by its label component or itself');
  return problems;
};
