export const chatWords = {
  usage: 'usage: npm run -s chat -- [--as NAME] [--keeper] [--files FOLDER] [--studio ID]',
  prompt: '> ',
  hello: [
    'Type a command: /water-or-stir bucket:gg, /bucket list, /help. Tab completes, Up brings lines back.',
    'The number of an offered line is its button. exit ends.',
  ].join('\n'),
  demo: (file: string) => `The demo studio, in ${file}. All of it is invented.`,
};
