import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';

const types: Record<string, string> = {
  js: 'text/javascript; charset=utf-8',
  css: 'text/css; charset=utf-8',
  svg: 'image/svg+xml',
  webmanifest: 'application/manifest+json',
};

const placed = (specifier: string) => fileURLToPath(import.meta.resolve(specifier));

const file = (specifier: string) => {
  const plain = readFileSync(placed(specifier));
  const type = types[specifier.slice(specifier.lastIndexOf('.') + 1)] ?? 'application/octet-stream';
  // Every browser takes gzip, also without TLS.
  return { type, plain, gzip: gzipSync(plain, { level: 9 }) };
};

export type PageFiles = ReturnType<typeof pageFiles>;

/** The page's files, read once. A path that is not one of their names is not found. */
export const pageFiles = () => {
  const scripts = readdirSync(dirname(placed('#built/main.js'))).filter((name) => name.endsWith('.js'));
  const files = new Map([
    ...scripts.map((name) => [name, file(`#built/${name}`)] as const),
    ...readdirSync(placed('#page/looks')).map((name) => [name, file(`#page/looks/${name}`)] as const),
  ]);
  const hash = createHash('sha256');
  for (const [name, { plain }] of files) hash.update(name).update(plain);
  const version = hash.digest('base64url').slice(0, 12);
  return {
    version,
    get: (name: string) => files.get(name),
    /** A script and the chunks that it imports, so that the browser can preload them. */
    scripts(first: 'main.js' | 'board.js'): string[] {
      const other = first === 'main.js' ? 'board.js' : 'main.js';
      return scripts.filter((name) => name !== other);
    },
    url: (name: string): string => `/page/${version}/${name}`,
  };
};
