import { roomWords } from '../../words/platform/roomWords.ts';
import type { PageFiles } from './pageFiles.ts';
import type { WireStart } from '../wire.ts';

const escaped = (text: string) => text.replace(/[&<>"']/g, (char) => `&#${char.charCodeAt(0)};`);

/** JSON for an HTML script element, escaped so that it cannot end the element. */
const json = (value: unknown) =>
  JSON.stringify(value).replace(
    /[<>&\u2028\u2029]/g,
    (char) => `\\u${char.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );

export const shell = (
  page: PageFiles,
  { script, start, title }: { script: 'main.js' | 'board.js'; title: string; start?: WireStart },
): string => `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1, viewport-fit=cover, interactive-widget=resizes-content">
<meta name="color-scheme" content="light dark">
<title>${escaped(title)}</title>
<link rel="stylesheet" href="${page.url('room.css')}">
${page
  .scripts(script)
  .map((name) => `<link rel="modulepreload" href="${page.url(name)}">`)
  .join('\n')}
<link rel="icon" type="image/svg+xml" href="${page.url('pail.svg')}">
<link rel="manifest" href="${page.url('room.webmanifest')}">
</head>
<body>
<noscript><p>${roomWords.needsScript}</p></noscript>
${start ? `<script type="application/json" id="start">${json(start)}</script>` : ''}
<script type="module" src="${page.url(script)}"></script>
</body>
</html>
`;
