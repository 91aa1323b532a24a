import { someOf } from '../text/someOf.ts';

/** What an operator reads who brings a logbook in. */
export const importWords = {
  usage: [
    'usage: npm run -s import -- FILE.json [--studio NAME] [--server ID] [--states-anew]',
    '       brings in what /export wrote, as a new studio',
  ].join('\n'),
  noFile: (file: string) => `there is no file ${file}`,
  noName: (file: string) => `The studio in ${file} has no name. Give it one with --studio NAME.`,
  notAnExport: (file: string) =>
    `${file} is not an export: it does not begin as a file of /export does, or somebody has reformatted it. Nothing was brought in.`,
  newerFormat: (file: string, format: number) =>
    `${file} is in format ${format}, from a newer release. Update the bot first. Nothing was brought in.`,
  aPart: (file: string) =>
    `${file} is only a part of a logbook, exported with days:. Only a whole one can be brought in. Nothing was brought in.`,
  damaged: (file: string, line: number) =>
    `${file} is damaged, or from a newer release: line ${line} is not as /export writes it. Nothing was brought in.`,
  cutOff: (file: string, line: number) =>
    `${file} ends too early, in line ${line}: the rest is missing. Nothing was brought in.`,
  differs: (file: string, what: string) =>
    `In ${file}, ${what} does not follow from the entries: it was changed by hand, exported with bucket:, or exported by another release. Nothing was brought in. --states-anew takes the entries and works everything else out again.`,
  exists: (name: string) =>
    `There is a studio ${name} in the logbook already. Choose another name with --studio NAME. Nothing was brought in.`,
  serverKnown: (server: string) =>
    `The Discord server ${server} has a studio in the logbook already. Nothing was brought in.`,
  brought: (name: string, id: string, entries: number, members: number) =>
    `${name} is brought in, as studio ${id}: ${someOf(entries, 'entry', 'entries')}, ${someOf(members, 'member', 'members')}.`,
  namesake: (called: string) =>
    `Another member has the same name; at the terminal this one is --as "${called}".`,
  link: 'Members link their accounts with /link: docs/data.md says how.',
};
