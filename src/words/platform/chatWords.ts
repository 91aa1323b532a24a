export const chatWords = {
  usage: 'usage: npm run -s chat -- [--as NAME] [--keeper] [--files FOLDER] [--studio ID]',
  prompt: '> ',
  hello: [
    'Type what you measured (gull grey 1.46 13 sec stirred), a question, or a command: /bucket list, /help.',
    'Tab completes a word; the Up key brings earlier lines back.',
    'To press a suggested line, type its number, or yes to “Log it?”. Type exit to leave.',
  ].join('\n'),
  demo: (file: string) => `The demo studio, in ${file}. All of it is invented.`,
};
