import type { Instant } from '../../studio/ids.ts';
import type { WeighedMaterial } from '../../studio/batch/scaleRecipe.ts';
import type { Text } from '../../words/text/text.ts';
import type { Words } from '../../words/words.ts';
import type { ReplyFile } from '../../contract/contract.ts';
import { plainText } from '../../contract/plainText.ts';
import { normalizedName } from '../../text/normalizedName.ts';

interface Sheet {
  name: string;
  title: Text;
  materials: readonly WeighedMaterial[];
  water: number;
  powder: number;
  steps: readonly Text[];
  cautions: readonly Text[];
}

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');

const style = `
  @page { size: A4; margin: 16mm }
  * { box-sizing: border-box }
  body { font: 12pt/1.45 system-ui, sans-serif; color: #111; background: #fff; max-width: 178mm; margin: 8mm auto; padding: 0 4mm }
  h1 { font-size: 20pt; margin: 0 0 2mm }
  p { margin: 0 0 4mm }
  table { border-collapse: collapse; width: 100%; margin: 4mm 0 }
  th { text-align: left; font-size: 9.5pt; font-weight: 600; border-bottom: 1.5pt solid #111 }
  th, td { padding: 2mm 2mm }
  tbody th { border-bottom: .5pt solid #999; padding-top: 4mm }
  td { border-bottom: .5pt solid #999 }
  td.grams, th.grams { text-align: right; font-variant-numeric: tabular-nums; white-space: nowrap }
  tr.sum td { font-weight: 600; border-bottom-width: 1.5pt; border-bottom-color: #111 }
  thead th:first-child { width: 16mm }
  .tick { width: 6mm; height: 6mm; border: 1pt solid #111; display: inline-block; vertical-align: middle }
  td.tick-cell, li { break-inside: avoid }
  ol { padding-left: 0; list-style: none }
  li { margin: 0 0 2.5mm; padding-left: 10mm; text-indent: -10mm }
  li .tick { margin-right: 4mm }
  .caution { border: 1.5pt solid #111; padding: 3mm 4mm; margin: 4mm 0; break-inside: avoid }
  .caution p { margin: 0 0 1.5mm }
  .write { border-bottom: .5pt solid #111; display: inline-block; min-width: 34mm }
  @media print { body { margin: 0; padding: 0; max-width: none } }
`;

const tick = '<span class="tick"></span>';

/** A page to print and tick off while weighing. It has no script and loads nothing. */
export const batchSheet = (
  { name, title, materials, water, powder, steps, cautions }: Sheet,
  { words, now, zone }: { words: Words; now: Instant; zone: string },
): ReplyFile => {
  const w = words.batch;
  const plain = (text: Text) => escaped(plainText(text, { now, zone }));
  const row = (what: string, grams: string, sum = false) =>
    `<tr${sum ? ' class="sum"' : ''}><td class="tick-cell">${sum ? '' : tick}</td><td>${what}</td><td class="grams">${grams}</td></tr>`;
  const rows = (addition: boolean) =>
    materials
      .filter((one) => one.addition === addition)
      .map((one) => row(escaped(one.material), String(one.grams)))
      .join('\n');
  const over = materials.some(({ addition }) => addition)
    ? `<tbody>
<tr><th colspan="3" scope="rowgroup">${escaped(w.factOver)}</th></tr>
${rows(true)}
</tbody>
`
    : '';
  const content = `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(name)}</title>
<style>${style}</style>
</head>
<body>
<h1>${escaped(name)}</h1>
<p>${plain(title)} ${plain(w.sheetDate(now))}</p>
<div class="caution" role="note">${cautions.map((text) => `<p>${plain(text)}</p>`).join('')}</div>
<table>
<thead><tr><th scope="col">${escaped(w.sheetDone)}</th><th scope="col">${escaped(w.sheetMaterial)}</th><th scope="col" class="grams">${escaped(w.sheetGrams)}</th></tr></thead>
<tbody>
${rows(false)}
</tbody>
${over}<tbody>
${row(escaped(w.sheetPowder), String(powder), true)}
${row(escaped(w.factWater), String(water))}
</tbody>
</table>
<ol>
${steps.map((text) => `<li>${tick}${plain(text)}</li>`).join('\n')}
</ol>
<p>${escaped(w.sheetMeasured)} <span class="write">&nbsp;</span> &emsp; ${escaped(w.sheetBy)} <span class="write">&nbsp;</span></p>
</body>
</html>
`;
  const slug = normalizedName(name)
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
  return { name: `${slug === '' ? 'batch' : slug.slice(0, 40)}.html`, type: 'text/html', content };
};
