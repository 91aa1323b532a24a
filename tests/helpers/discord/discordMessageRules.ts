import { ComponentType, MessageFlags } from 'discord.js';
import { type Fields, type SentFile, fields, isFields, list, text } from './discordBody.ts';

const MEBIBYTE = 1024 * 1024;
const LAYOUT_ONLY = new Set<number>([
  ComponentType.Section,
  ComponentType.TextDisplay,
  ComponentType.Thumbnail,
  ComponentType.MediaGallery,
  ComponentType.File,
  ComponentType.Separator,
  ComponentType.Container,
]);

/** Every component of a message or form, parents before children. */
export const everyComponent = (components: unknown): Fields[] =>
  list(components).flatMap((one) => [
    one,
    ...everyComponent(one['components']),
    ...everyComponent(isFields(one['component']) ? [one['component']] : []),
    ...everyComponent(isFields(one['accessory']) ? [one['accessory']] : []),
  ]);

/** Discord's rules for messages that its published schemas leave out. */
export const messageProblems = (body: Fields, files: SentFile[], edits: boolean): string[] => [
  ...contentProblems(body, files, edits),
  ...componentProblems(body),
  ...embedProblems(body),
  ...mentionProblems(body),
  ...fileProblems(body, files),
];

const flagged = (body: Fields, flag: number): boolean => (Number(body['flags'] ?? 0) & flag) !== 0;

const contentProblems = (body: Fields, files: SentFile[], edits: boolean): string[] => {
  const problems: string[] = [];
  const content = text(body['content']);
  if (content.length > 2000) problems.push(`content has ${content.length} characters, at most 2000`);
  const shown = [body['embeds'], body['components'], body['attachments']].some(
    (part) => list(part).length > 0,
  );
  const empty = content.trim() === '' && !shown && files.length === 0 && !isFields(body['poll']);
  // An edit may omit the content, but not send an empty one that leaves the message empty.
  if (empty && (!edits || 'content' in body)) problems.push('an empty message');
  if (!flagged(body, MessageFlags.IsComponentsV2)) return problems;
  if (content !== '') problems.push('components V2 and content together');
  if (list(body['embeds']).length > 0) problems.push('components V2 and embeds together');
  if (isFields(body['poll'])) problems.push('components V2 and a poll together');
  return problems;
};

const componentProblems = (body: Fields): string[] => {
  const problems: string[] = [];
  const all = everyComponent(body['components']);
  const layout = flagged(body, MessageFlags.IsComponentsV2);
  const rows = list(body['components']);
  if (!layout && rows.some((one) => LAYOUT_ONLY.has(Number(one['type']))))
    problems.push('a layout component without the components V2 flag');
  if (!layout && rows.length > 5) problems.push(`${rows.length} action rows, at most 5`);
  if (all.length > 40) problems.push(`${all.length} components, at most 40`);
  const words = all
    .filter((one) => one['type'] === ComponentType.TextDisplay)
    .reduce((sum, one) => sum + text(one['content']).length, 0);
  if (words > 4000) problems.push(`${words} characters of text display, at most 4000`);
  problems.push(...customIdProblems(all));
  for (const one of all) {
    if (one['type'] === ComponentType.Button) problems.push(...buttonProblems(one));
    if (one['type'] === ComponentType.StringSelect) problems.push(...selectProblems(one));
    if (one['type'] === ComponentType.ActionRow) problems.push(...rowProblems(one));
  }
  return problems;
};

export const customIdProblems = (all: Fields[]): string[] => {
  const ids = all.map((one) => text(one['custom_id'])).filter((id) => id !== '');
  return [...new Set(ids.filter((id, i) => ids.indexOf(id) !== i))].map((id) => `custom_id "${id}" twice`);
};

const buttonProblems = (one: Fields): string[] => {
  const problems: string[] = [];
  if (text(one['label']) === '' && !isFields(one['emoji'])) problems.push('a button without label or emoji');
  const link = one['style'] === 5;
  if (link !== (text(one['url']) !== '')) problems.push('a link button needs a url, and only a link button');
  if (!link && one['style'] !== 6 && text(one['custom_id']) === '')
    problems.push('a button without custom_id');
  return problems;
};

export const selectProblems = (one: Fields): string[] => {
  const values = list(one['options']).map((option) => text(option['value']));
  const problems = new Set(values).size < values.length ? ['two options of a select share a value'] : [];
  if (Number(one['max_values'] ?? 1) > values.length) problems.push('max_values beyond the options');
  if (Number(one['min_values'] ?? 1) > Number(one['max_values'] ?? 1))
    problems.push('min_values over max_values');
  return problems;
};

const rowProblems = (row: Fields): string[] => {
  const inside = list(row['components']);
  const selects = inside.filter((one) => one['type'] !== ComponentType.Button);
  return selects.length > 0 && inside.length > 1 ? ['a select shares its row'] : [];
};

const embedProblems = (body: Fields): string[] => {
  const size = (embed: Fields): number =>
    text(embed['title']).length +
    text(embed['description']).length +
    text(fields(embed['author'])['name']).length +
    text(fields(embed['footer'])['text']).length +
    list(embed['fields']).reduce((sum, one) => sum + text(one['name']).length + text(one['value']).length, 0);
  const total = list(body['embeds']).reduce((sum, embed) => sum + size(embed), 0);
  return total > 6000 ? [`${total} characters in embeds, at most 6000`] : [];
};

const mentionProblems = (body: Fields): string[] => {
  const allowed = body['allowed_mentions'];
  // Discord would ping whoever the text mentions; the bot must always restrict that itself.
  if (!isFields(allowed) || !Array.isArray(allowed['parse'])) return ['allowed_mentions is not explicit'];
  return ['users', 'roles']
    .filter((kind) => Array.isArray(allowed['parse']) && allowed['parse'].includes(kind))
    .filter((kind) => Array.isArray(allowed[kind]) && allowed[kind].length > 0)
    .map((kind) => `allowed_mentions parses ${kind} and lists them too`);
};

const fileProblems = (body: Fields, files: SentFile[]): string[] => {
  const problems: string[] = [];
  const bytes = files.reduce((sum, file) => sum + file.bytes.length, 0);
  if (bytes > 10 * MEBIBYTE) problems.push(`${bytes} bytes of files, at most 10 MiB`);
  if (files.length > 10) problems.push(`${files.length} files, at most 10`);
  const sent = new Set(files.map((file) => file.field));
  for (const attachment of list(body['attachments'])) {
    const id = String(attachment['id']);
    // A short id refers to a file of this request, a long one to an existing attachment.
    if (id.length < 15 && !sent.has(`files[${id}]`)) problems.push(`attachment ${id} has no file`);
  }
  return problems;
};
