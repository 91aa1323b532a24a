import { gzipSync } from 'node:zlib';

const fetched = async (url: string): Promise<number> => {
  const response = await fetch(url, { headers: { 'accept-encoding': 'identity' } });
  if (!response.ok) throw new Error(`${url}: ${response.status}`);
  return gzipSync(Buffer.from(await response.arrayBuffer())).length;
};

const sum = async (urls: readonly string[]): Promise<number> =>
  (await Promise.all(urls.map(fetched))).reduce((all, one) => all + one, 0);

/** What the page and the wall board load: each script and stylesheet once, compressed as it is sent. */
export const pageWeight = async (url: string): Promise<{ scripts: number; styles: number }> => {
  const pages = await Promise.all(['/', '/board'].map(async (path) => (await fetch(`${url}${path}`)).text()));
  const found = (pattern: RegExp) => [
    ...new Set(pages.flatMap((text) => [...text.matchAll(pattern)].map(([, path = '']) => `${url}${path}`))),
  ];
  return {
    scripts: await sum(found(/(?:src|href)="(\/page\/[^"]+\.js)"/g)),
    styles: await sum(found(/href="(\/page\/[^"]+\.css)"/g)),
  };
};
