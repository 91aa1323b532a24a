import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { brotliCompressSync, gzipSync } from 'node:zlib';

export interface PageFile {
  type: string;
  plain: Buffer;
  br: Buffer;
  gzip: Buffer;
}

const types: Record<string, string> = {
  js: 'text/javascript; charset=utf-8',
  css: 'text/css; charset=utf-8',
  svg: 'image/svg+xml',
  webmanifest: 'application/manifest+json',
};

const file = (path: string): PageFile => {
  const plain = readFileSync(path);
  const type = types[path.slice(path.lastIndexOf('.') + 1)] ?? 'application/octet-stream';
  return { type, plain, br: brotliCompressSync(plain), gzip: gzipSync(plain, { level: 9 }) };
};

const placed = (specifier: string) => fileURLToPath(import.meta.resolve(specifier));

/** The page's files, read once. A path that is not one of their names is not found. */
export class PageFiles {
  readonly version: string;
  readonly #files: ReadonlyMap<string, PageFile>;

  private constructor(files: ReadonlyMap<string, PageFile>) {
    this.#files = files;
    const hash = createHash('sha256');
    for (const [name, { plain }] of files) hash.update(name).update(plain);
    this.version = hash.digest('base64url').slice(0, 12);
  }

  static load(): PageFiles {
    const scripts = readdirSync(dirname(placed('#built/main.js'))).filter((name) => name.endsWith('.js'));
    const looks = readdirSync(placed('#page/looks'));
    return new PageFiles(
      new Map([
        ...scripts.map((name) => [name, file(placed(`#built/${name}`))] as const),
        ...looks.map((name) => [name, file(placed(`#page/looks/${name}`))] as const),
      ]),
    );
  }

  get(name: string): PageFile | undefined {
    return this.#files.get(name);
  }

  /** A script and the chunks that it imports, so that the browser can preload them. */
  scripts(first: 'main.js' | 'board.js'): string[] {
    const other = first === 'main.js' ? 'board.js' : 'main.js';
    return [...this.#files.keys()].filter((name) => name.endsWith('.js') && name !== other);
  }

  url(name: string): string {
    return `/page/${this.version}/${name}`;
  }
}
