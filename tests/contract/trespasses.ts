import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { parseSync } from 'oxc-parser';
import { rooms, type Room } from './rooms.ts';

interface Import {
  from: string;
  typeOnly: boolean;
}

/** Every `import('…').Type` in a syntax tree. */
const typeImports = (node: unknown): Import[] => {
  if (typeof node !== 'object' || node === null) return [];
  const here: Import[] =
    'type' in node && node.type === 'TSImportType' && 'source' in node
      ? [{ from: String(Object(node.source).value), typeOnly: true }]
      : [];
  return [...here, ...Object.values(node).flatMap(typeImports)];
};

/** All imports of a file: static, type-only, re-exported and dynamic. */
const importsOf = (file: string, text: string): Import[] => {
  const { module, program } = parseSync(file, text);
  return [
    ...module.staticImports.map(({ moduleRequest, entries }) => ({
      from: moduleRequest.value,
      typeOnly: entries.length > 0 && entries.every(({ isType }) => isType),
    })),
    ...module.staticExports.flatMap(({ entries }) =>
      entries.flatMap(({ moduleRequest, isType }) =>
        moduleRequest ? [{ from: moduleRequest.value, typeOnly: isType }] : [],
      ),
    ),
    ...module.dynamicImports.map(({ moduleRequest: { start, end } }) => ({
      from: text.slice(start + 1, end - 1),
      typeOnly: false,
    })),
    ...typeImports(program),
  ];
};

const roomOf = (file: string): Room | undefined =>
  rooms.find(({ room }) => room === file || room === dirname(file));

const isAmong = (room: string, list: readonly string[] = []): boolean =>
  list.some((one) => one === room || (one.endsWith('/') && room.startsWith(one)));

/** Why a file may not import this; undefined if it may. */
const wrongWith = (file: string, own: Room, { from, typeOnly }: Import): string | undefined => {
  if (!from.startsWith('.'))
    return own.packages?.some(
      (name) =>
        from === name ||
        from.startsWith(name.endsWith('/') || name.endsWith(':') || name === '' ? name : `${name}/`),
    )
      ? undefined
      : `${own.room} imports no ${from}`;
  const target = normalize(join(dirname(file), from));
  const other = roomOf(target);
  if (!other) return `${target} lies in no room`;
  if (other === own) return undefined;
  if (rooms.indexOf(other) > rooms.indexOf(own)) return `${other.room} lies above ${own.room}`;
  if (isAmong(other.room, own.not)) return `${own.room} may not know ${other.room}`;
  if (!typeOnly && isAmong(other.room, own.types))
    return `${own.room} may import only types of ${other.room}`;
  return undefined;
};

export interface Trespass {
  file: string;
  why: string;
}

/** The forbidden imports of a file. */
export const trespassesIn = (file: string, text: string): Trespass[] => {
  const own = roomOf(file);
  if (!own) return [{ file, why: `${dirname(file)} is no room: give it a row in tests/contract/rooms.ts` }];
  return importsOf(file, text).flatMap((one) => {
    const wrong = wrongWith(file, own, one);
    return wrong === undefined ? [] : [{ file, why: `${wrong}. ${own.instead}` }];
  });
};

/** Every source file below the given folders, relative to the root. */
export const sourceFiles = (...folders: string[]): string[] =>
  folders.flatMap((folder) =>
    readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts'))
      .map((name) => join(folder, name)),
  );

export const trespasses = (...folders: string[]): Trespass[] =>
  sourceFiles(...folders).flatMap((file) => trespassesIn(file, readFileSync(file, 'utf8')));
