import { wordOfEachForm, wordsIn } from './wordLists.ts';

/** One spelling for synonyms and variants: British and American, trade and household. */
export const sameWords = wordOfEachForm({
  color: 'colour colours coloured shade hue tint',
  gray: 'grey',
  mold: 'mould mouldy moldy',
  sulfate: 'sulphate',
  liter: 'litre litres',
  flocculant: 'floculant floculate flocculate flocculation flocked',
  deflocculant: 'defloc defloculant deflocculate',
  sieve: 'seive seived seiving',
  spill: 'spilt spilled',
  run: 'ran',
  frozen: 'froze freezing freeze',
  shrink: 'shrank shrunk',
  stink: 'stunk stank stench stinky stinks reeks reek pong pongs whiff',
  smell: 'smelly',
  stick: 'stuck sticks',
  break: 'broke broken',
  write: 'wrote written',
  children: 'kids kid childrens child',
  thick: 'thicker thickest',
  thin: 'thinner thinly',
  runny: 'runnier',
  heavy: 'heavier',
  hard: 'harder',
  odor: 'odour',
  center: 'centre',
  fiber: 'fibre',
  dry: 'dries dried drying drier',
  gravity: 'sg',
  flow: 'viscosity',
  bucket: 'pail pails tub barrel bin drum container',
  settle: 'sinks sinking sank sunk settles settled',
  dip: 'dunk dunks dunked dunking immerse immersed submerge submerged',
  watery: 'sloppy liquidy soupy',
  gloopy: 'goopy globby claggy gloop stodgy',
  gel: 'jelly jellied jello jellylike gelly',
  lump: 'clump clumps clumpy chunk chunks chunky lumpy',
  smudge: 'smear smeared smears',
  spoon: 'teaspoon teaspoons spoonful spoons',
  second: 'secs sec',
  plaster: 'bandaid',
  weigh: 'weighs weighing',
  whisk: 'whisked whisking',
  froth: 'frothy',
  foam: 'foamy',
  bubble: 'bubbly',
  cobweb: 'spiderweb spiderwebs',
  scale: 'scales',
  ice: 'icy',
  burned: 'burnt',
  allergy: 'allergies allergic',
  itch: 'itchy itches itching',
  poison: 'poisonous poisoned poisoning',
  dangerous: 'unsafe hazardous hazard',
});

const phrases: readonly (readonly [said: string, meant: string])[] = [
  ['pin hole', 'pinhole'],
  ['pin holes', 'pinhole'],
  ['s g', 'gravity'],
  ['sp gr', 'gravity'],
  ['food safe', 'foodsafe'],
  ['re fire', 'refire'],
  ['re glaze', 'reglaze'],
  ['yoghurt', 'yogurt'],
];

/** Joins phrases of two words that mean one thing. */
export const samePhrases = (words: readonly string[]): string[] => {
  let text = ` ${words.join(' ')} `;
  for (const [said, meant] of phrases) text = text.replaceAll(` ${said} `, ` ${meant} `);
  return wordsIn(text);
};
