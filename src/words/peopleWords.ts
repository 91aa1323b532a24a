import { t, type Text } from './text.ts';

export const peopleWords = {
  forget: {
    about: 'Have the bot forget your name and your words, on every platform',
    sure: 'yes does it; without it you are told what goes and what stays',
    ask: ['Forget you? Nothing has been done yet, and it can’t be undone.'] as Text,
    factGoes: 'Goes',
    goes: [
      'your name, how each platform knows you, your sign-ins, your notes, what you called your pots, your reminders, what you wrote in the room.',
    ] as Text,
    factStays: 'Stays',
    stays: ['what was done to the buckets, when, by “a former member”: the arithmetic needs it.'] as Text,
    others:
      'A note of somebody else that names you stays until a keeper takes it out: /redact. Backups made before still hold your name until they are deleted. What Discord shows already, it keeps: delete it there.',
    press: ['Forget me'] as Text,
    done: ['You are forgotten here. Use the bot again and you are somebody new.'] as Text,
    onlyKeeper: [
      'You are the only keeper who is named, so nothing was done. Name another first: /studio keeper member:…',
    ] as Text,
    later: ['The last traces leave the file within minutes.'] as Text,
  },
  redact: {
    about: 'Take the note of an entry out for good; the entry stays',
    entry: 'The entry, such as 7-41',
    none: (id: string): Text => t`${[id]} has no note.`,
    done: (id: string): Text => t`The note of ${[id]} is taken out for good. The entry stays.`,
    removed: 'note removed by a keeper',
  },
};
