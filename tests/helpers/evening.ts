/** A studio with ten buckets, as a keeper sets it up at a terminal. */
export const setUp = `
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

/** What a member types that evening, and the expected result of each line. One of them comes ten minutes later. */
export const evening: [line: string, step: string, title: RegExp][] = [
  ['/water-or-stir gg', 'stir', /^Gull Grey: Stir it first/],
  ['/stirred gg minutes:3', 'measure', /^Gull Grey: Now weigh a cup of it/],
  ['/reading bucket:gg weight:236.1g seconds:14', 'add-water', /^Gull Grey: Add 2\.\d+ l of water, stir/],
  ['/added bucket:gg what:water amount:2l', 'measure', /^Gull Grey: Stir it to the bottom, then measure/],
  ['/reading bucket:gg weight:228.5g look:thin stirred:yes', 'measure', /^Gull Grey: Now time the flow cup/],
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
    /^Foam White: It reads 1\.44, and no window is set yet\. The keepers see it on their round/,
  ],
  ['/reading bucket:iron weight:240.5g look:right stirred:yes', 'add-water', /each litre/],
  ['/reading bucket:barnacle weight:230.0g look:right stirred:yes seen:lumps', 'ask-keeper', /never sieved/],
  ['/reading bucket:test weight:229.9g look:thin stirred:yes', 'flocculate', /^Test Jar: Thin.* drops/],
  ['/water-or-stir lead', 'on-hold', /^Lead Relic: On hold/],
  ['/reading bucket:fog weight:229g stirred:no seen:clear-water', 'stir', /^Fog: Stir it first/],
  ['/stirred fog seen:cake', 'stir', /^Fog: Scrape up the bottom/],
  ['/stirred fog with:mixer minutes:3 seen:cake-gone', 'measure', /^Fog: Now measure/],
  ['/reading bucket:fog weight:227g look:thin', 'measure', /^Fog: Let the air rise out/],
];

/** The lines of a script alone, without who says them and when. */
export const linesIn = (script: string): string[] =>
  script.split('\n').filter((line) => line.startsWith('/'));
