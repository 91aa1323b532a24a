export const chatWords = {
  usage: 'usage: npm run -s chat -- [--as NAME] [--keeper] [--files FOLDER] [--studio ID]',
  prompt: '> ',
  hello: [
    'Type a command: /water-or-stir bucket:gg, /bucket list, /help. Tab completes a word; the Up key brings earlier lines back.',
    'To press a suggested line, type its number. Type exit to leave.',
  ].join('\n'),
  demo: (file: string) => `The demo studio, in ${file}. All of it is invented.`,
};
