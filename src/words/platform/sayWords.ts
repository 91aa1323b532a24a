import { studioList } from './studioList.ts';

export const sayWords = {
  usage: [
    "usage: npm run -s say -- [--as NAME] [--keeper] [--at ISO-INSTANT] [--json] [--files FOLDER] [--studio ID] '<line>' ['<line>' …]",
    '       npm run -s say -- [options] -      reads lines from standard input;',
    '                                          @ISO-INSTANT NAME [keeper] sets clock, member and role',
  ].join('\n'),
  fileKept: (path: string) => `its file is saved as ${path}`,
  fileComes: (name: string) => `the answer has a file, ${name}: run it again with --files FOLDER to save it`,
  fileNotKept: (why: string) => `its file could not be saved: ${why}`,
  ownStudio: 'This studio',
  noName: '--as wants the name of whoever speaks',
  badInstant: (typed: string) => `--at wants an instant such as 2026-03-08T02:30:00Z, not "${typed}"`,
  badSetting: (line: string) =>
    `a line of settings looks like @2026-03-08T02:30:00Z NAME keeper, not "${line}"`,
  noStudio: (typed: string, studios: readonly { id: string; name: string }[]) =>
    `there is no studio "${typed}" in this file; there are:\n${studioList(studios)}`,
  whichStudio: (studios: readonly { id: string; name: string }[]) =>
    `this file holds several studios; say which with --studio ID:\n${studioList(studios)}`,
};
