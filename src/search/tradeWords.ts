/** One spelling for what is spelt or said in several ways: British and American, the trade's and the kitchen's. */
export const sameWords: ReadonlyMap<string, string> = new Map([
  ['colour', 'color'],
  ['colours', 'color'],
  ['coloured', 'color'],
  ['grey', 'gray'],
  ['mould', 'mold'],
  ['mouldy', 'mold'],
  ['moldy', 'mold'],
  ['sulphate', 'sulfate'],
  ['litre', 'liter'],
  ['litres', 'liter'],
  ['floculant', 'flocculant'],
  ['floculate', 'flocculant'],
  ['flocculate', 'flocculant'],
  ['flocculation', 'flocculant'],
  ['flocked', 'flocculant'],
  ['defloc', 'deflocculant'],
  ['defloculant', 'deflocculant'],
  ['deflocculate', 'deflocculant'],
  ['seive', 'sieve'],
  ['seived', 'sieve'],
  ['seiving', 'sieve'],
  ['spilt', 'spill'],
  ['spilled', 'spill'],
  ['ran', 'run'],
  ['froze', 'frozen'],
  ['freezing', 'frozen'],
  ['freeze', 'frozen'],
  ['shrank', 'shrink'],
  ['shrunk', 'shrink'],
  ['stunk', 'stink'],
  ['stank', 'stink'],
  ['smelly', 'smell'],
  ['stuck', 'stick'],
  ['sticks', 'stick'],
  ['broke', 'break'],
  ['broken', 'break'],
  ['wrote', 'write'],
  ['written', 'write'],
  ['kids', 'children'],
  ['kid', 'children'],
  ['childrens', 'children'],
  ['child', 'children'],
  ['sg', 'gravity'],
  ['viscosity', 'flow'],
  ['pail', 'bucket'],
  ['pails', 'bucket'],
  ['tub', 'bucket'],
]);

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

/** The words with what is said in two of them put as one. */
export const samePhrases = (words: readonly string[]): string[] => {
  let text = ` ${words.join(' ')} `;
  for (const [said, meant] of phrases) text = text.replaceAll(` ${said} `, ` ${meant} `);
  return text
    .trim()
    .split(' ')
    .filter((word) => word !== '');
};
