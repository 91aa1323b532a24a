import type { MaterialCaution } from './materialTable.ts';

/**
 * Words that name a hazard wherever they stand in a material's name, in its trade names and formulas too. What they warn
 * of: Pocket Guide to Chemical Hazards, NIOSH; which names the trade has for them: from memory.
 */
const hazardWords: readonly (readonly [RegExp, ...MaterialCaution[]])[] = [
  [/\b(?:lead|litharge|massicot|minium|galena|cerus+ite|ceruse|plumb(?:ic|ous|ate))\b/, 'lead'],
  [/\bpb(?:o|s|o2|3o4|co3|sio3)?\b/, 'lead'],
  [/\b(?:cadmium|cad (?:red|yellow|orange)|cds|cdse)\b/, 'cadmium'],
  [/\b(?:uranium|uranyl|uranate|uraninite|pitchblende|yellowcake)\b/, 'uranium'],
  [/\b(?:arsenic|arsenious|arsenate|orpiment|realgar)\b/, 'arsenic'],
  [/\b(?:asbestos|chrysotile|tremolite|crocidolite|amosite)\b/, 'asbestos'],
  [/\b(?:antimony|stibnite|selenium|mercur\w*|cinnabar|thallium|beryll\w*|thorium|osmium)\b/, 'toxic'],
  [/(?<!\biron )\b(?:di|bi)?chromates?\b/, 'chromium', 'chromate'],
  [/\bchrom(?:e|ium|ic|ite)\b/, 'chromium'],
  [/\b(?:barium|witherite|baryta|barytes?|barite|baco3)\b/, 'barium'],
  [/\b(?:mangan\w*|pyrolusite|mno2)\b/, 'manganese'],
  [/\b(?:nickel\w*|nio)\b/, 'nickel'],
  [/\b(?:cobalt\w*|smalt|zaff(?:re|er))\b/, 'cobalt'],
  [/\b(?:copper|cupric|cuprous|malachite|azurite|verdigris)\b/, 'copper'],
  [/\b(?:vanadi\w*|v2o5)\b/, 'vanadium'],
  [/\b(?:lithi\w*|spodumene|petalite|lepidolite|amblygonite)\b/, 'lithium'],
  [/\b(?:boron|borax|boric|borates?|boracic|colemanite|ulexite|kernite|tincal)\b/, 'boron'],
  [/\b(?:fluor\w*|\w+fluoride|cryolite)\b/, 'fluorine'],
  [/\b(?:caustic|lye|quicklime|cement|ammonia|hydroxides?(?<!alumin(?:i?um) hydroxide))\b/, 'caustic'],
  [/\b(?:(?:burnt|slaked|hydrated) lime|calcium oxide)\b/, 'caustic'],
  [/\b(?<!\b(?:bone|volcanic) )ash\b/, 'caustic'],
  [
    /\b(?:(?:sodium|potassium|lithium) carbonate|washing soda|(?:sodium|potassium) (?:meta)?silicate|water ?glass)\b/,
    'caustic',
    'soluble',
  ],
  [/\b(?:soda|pearl) ash\b/, 'soluble'],
  [/\b(?:chlorides?|nitrates?|acetates?|(?:di|bi)chromates?|borax|boric acid)\b/, 'soluble'],
  [/\b(?:copper|iron|cobalt|nickel|manganese|zinc|magnesium|potassium|sodium) sulfates?\b/, 'soluble'],
];

const hazard = String.raw`(?:lead(?:ed)?|cadmium|barium|uranium|arsenic|boron|lithium|copper|cobalt|manganese|nickel|chrome)`;
/** `lead-free`, `no lead or cadmium`; and the lead that is no metal. */
const denied = [
  /\blead (?:keeper|potter|teacher|tech\w*|instructor|artist|time)\b|\b(?:to|will|can|our|my|class) lead\b/g,
  new RegExp(String.raw`\b${hazard}(?:(?: and| or)? ${hazard})* free\b`, 'g'),
  new RegExp(
    String.raw`\b(?:no|non|not|without|free of|free from) (?:(?:any|raw) )*${hazard}(?: (?:and|or|nor|no) ${hazard})*\b`,
    'g',
  ),
];

/** One spelling: no accents, no case, no punctuation, American endings. */
const plain = (text: string): string =>
  text
    .normalize('NFKD')
    .replaceAll(/\p{M}+/gu, '')
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, ' ')
    .replaceAll('sulph', 'sulf')
    .trim();

/**
 * What a name says of itself that can hurt somebody, whether or not a table knows the material.
 * @example hazardsInName('White Lead') //=> ['lead']
 */
export const hazardsInName = (name: string): MaterialCaution[] => {
  const text = denied.reduce((rest, one) => rest.replaceAll(one, ' '), plain(name));
  return [...new Set(hazardWords.flatMap(([word, ...cautions]) => (word.test(text) ? cautions : [])))];
};
