export const seedWords = {
  onlyFile: 'The demo is made in a file of its own, not in a database.',
  usage: 'usage: npm run -s seed -- FILE      makes FILE and fills it with the demo studio',
  exists: (file: string) => `${file} is there already; the demo studio goes into a new file only`,
  filled: (file: string, studio: string) => `${file}: filled with ${studio}`,
};
