import { expect, it } from 'vitest';
import { verdictOf, type Answer } from '../helpers/discord/answerSchemas.ts';
import { runSay } from '../helpers/sayProcess.ts';
import { storeFile } from '../helpers/store/storeFile.ts';

const setUp = `
@2026-05-20T17:00:00Z Tove keeper
/studio set zone:America/St_Johns units:metric
/studio vessel name:"steel cup" tare:85.4g water:100.2g temperature:20C
/studio cup name:"hall cup" kind:ford4
/bucket add name:"Gull Grey" nick:gg pail:19l volume:15l gravity:1.42-1.46 seconds:12-16 cup:"hall cup" rest:4h
/bucket add name:Kelp nick:k pail:19l volume:17l gravity:1.44-1.48 seconds:12-16 cup:"hall cup"
/bucket add name:"Tide Pool" nick:tp pail:10l volume:6l gravity:1.40-1.44 seconds:10-14 cup:"hall cup"
/bucket add name:"Black Sand" pail:19l volume:18.5l gravity:1.5-1.54 cautions:manganese,gloves mesh:60
/bucket add name:"Foam White" pail:25l
/bucket add name:"Iron Bark" gravity:1.42-1.46
/bucket add name:Barnacle pail:19l volume:10l gravity:1.42-1.46 seconds:12-16 cup:"hall cup" mesh:never
/bucket add name:"Test Jar" pail:500ml volume:300ml gravity:1.42-1.46 use:test
/bucket add name:"Lead Relic" cautions:lead
/bucket add name:Fog pail:19l volume:12l gravity:1.42-1.46 seconds:12-16 cup:"hall cup" rest:2h
`;

/** What a member types that evening, and the expected result of each line. */
const evening: [line: string, step: string, title: RegExp][] = [
  ['/water-or-stir gg', 'stir', /^Gull Grey: Stir it first/],
  ['/stirred gg minutes:3', 'measure', /^Gull Grey: Weigh a cup of it now/],
  ['/reading bucket:gg weight:236.1g seconds:14', 'add-water', /^Gull Grey: Add 2\.\d+ l of water, stir/],
  ['/added bucket:gg what:water amount:2l', 'measure', /^Gull Grey: Stir it, then measure/],
  ['/reading bucket:gg weight:228.5g look:thin stirred:yes', 'measure', /^Gull Grey: Now time a cup/],
  ['/reading bucket:gg seconds:10 stirred:yes', 'flocculate', /^Gull Grey: Thin.*Take no water out/],
  ['/added bucket:gg what:flocculant amount:1tsp', 'measure', /^Gull Grey: Stir it in, wait 10 minutes/],
  ['@2026-05-20T22:10:00Z Wren\n/reading bucket:gg seconds:14 stirred:yes', 'use', /^Gull Grey: Use it/],
  ['/reading bucket:kelp weight:222g look:thin stirred:yes', 'ask-keeper', /^Kelp: Too much water.*keeper/],
  ['/reading bucket:"tide pool" weight:227g seconds:20 stirred:yes', 'stir-on', /^Tide Pool: Keep stirring/],
  ['/stirred tp minutes:5', 'measure', /^Tide Pool: Now time/],
  [
    '/reading bucket:tp seconds:19',
    'ask-keeper',
    /^Tide Pool: Thick, but not for lack of water.*Don't add water/,
  ],
  [
    '/reading bucket:"black sand" weight:250g stirred:yes',
    'add-water',
    /^Black Sand: It needs 4\.\d+ l of water, but the pail is too full: ladle/,
  ],
  [
    '/reading bucket:foam weight:230g look:right stirred:yes',
    'ask-keeper',
    /^Foam White: It reads 1\.44; no window is set yet\. A keeper says if that is right/,
  ],
  ['/reading bucket:iron weight:240.5g look:right stirred:yes', 'add-water', /each litre/],
  ['/reading bucket:barnacle weight:230.0g look:right stirred:yes seen:lumps', 'ask-keeper', /never sieved/],
  ['/reading bucket:test weight:229.9g look:thin stirred:yes', 'flocculate', /^Test Jar: Thin.* drops/],
  ['/water-or-stir lead', 'on-hold', /^Lead Relic: On hold/],
  ['/reading bucket:fog weight:229g stirred:no seen:clear-water', 'stir', /^Fog: Stir it first/],
  ['/stirred fog seen:cake', 'stir', /^Fog: Scrape up the bottom/],
  ['/stirred fog with:mixer minutes:3 seen:cake-gone', 'measure', /^Fog: Measure it now/],
  ['/reading bucket:fog weight:227g look:thin', 'measure', /^Fog: Let the air rise out/],
];

const spoken = async (file: string, lines: string): Promise<Answer[]> => {
  const said = await runSay(file, ['--json', '-'], { input: lines });
  expect(said.stderr).toBe('');
  return said.answers();
};

it('an evening with ten buckets is answered line by line', async () => {
  const file = storeFile();
  expect((await spoken(file, setUp)).filter(({ ok }) => !ok)).toEqual([]);
  const lines = evening.map(([line]) => line).join('\n');
  const answers = await spoken(file, `@2026-05-20T22:00:00Z Wren\n${lines}\n`);
  expect(answers).toHaveLength(evening.length);
  evening.forEach(([line, step, title], i) => {
    const answer = answers[i];
    if (!answer) throw new Error(`no answer to ${line}`);
    expect(verdictOf(answer).step, line).toBe(step);
    expect(answer.title, line).toMatch(title);
    // The title must make sense alone in a notification; at most three facts follow.
    expect(answer.title.length, line).toBeLessThan(140);
    expect(answer.facts.length, line).toBeLessThanOrEqual(3);
    expect(answer.actions.length, line).toBeLessThanOrEqual(3);
  });
});

it('what is offered in a reply can be typed as it stands', async () => {
  const file = storeFile();
  await spoken(file, setUp);
  const at = '@2026-05-20T22:00:00Z Wren\n';
  const [asked] = await spoken(file, `${at}/reading bucket:gg weight:236.1g seconds:14 stirred:yes\n`);
  const [pressed] = await spoken(file, `${at}${asked?.actions[0]?.line ?? ''}\n`);
  expect(pressed).toMatchObject({ ok: true, data: { verdict: { step: 'measure' } } });
  const [late] = await spoken(file, `${at}${asked?.actions[0]?.line ?? ''}\n`);
  expect(late).toMatchObject({ ok: false, kind: 'refusal' });
  expect(late?.reasons.join('\n')).toMatch(/Wren added 2\.\d+ l of water/);
});
