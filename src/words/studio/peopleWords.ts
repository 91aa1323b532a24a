import type { Instant } from '../../studio/ids.ts';
import { ours, said, t, type Text } from '../text/text.ts';

export const peopleWords = {
  forget: {
    about: 'Have the bot forget your name and your words, on every platform',
    sure: 'yes does it; without it you are told what goes and what stays',
    ask: ours('Forget you? Nothing has been done yet, and it can’t be undone.'),
    factGoes: 'Goes',
    goes: ours(
      'your name, how each platform knows you, your sign-ins, your notes, what you called your pots, your reminders, what you wrote in the room.',
    ),
    factStays: 'Stays',
    stays: ours('what was done to the buckets, when, by “a former member”: the arithmetic needs it.'),
    others:
      'A note of somebody else that names you stays until a keeper takes it out: /redact. Backups made before still hold your name until they are deleted. What Discord shows already, it keeps: delete it there.',
    press: ours('Forget me'),
    done: ours('You are forgotten here. Use the bot again and you are somebody new.'),
    onlyKeeper: ours(
      'You are the only keeper who is named, so nothing was done. Name another first: /studio keeper member:…',
    ),
    later: ours('The last traces leave the file within minutes.'),
  },
  link: {
    about: 'Be one member on two platforms: get a code here, type it there',
    code: 'The code that /link gave you on the other platform',
    sure: 'For a keeper: that the code is your own',
    isThatYou: (name: string): Text =>
      t`The code is ${said(name)}'s. Only if that is you: from then on ${said(name)} may do what you may.`,
    factIfSo: 'If it is you',
    surely: (code: string): Text => t`/link code:${said(code)} sure:yes`,
    offered: (code: string, until: Instant): Text =>
      t`Your code is ${[code]}. It works once, until ${{ at: until, show: 'clock' }}.`,
    factElsewhere: 'On the other platform',
    elsewhere: (code: string): Text => t`/link code:${[code]}`,
    factRoom: 'In the local room',
    atTheDoor: ours('type it at the door in place of the passcode, with a name and a word of your own.'),
    tellNobody: ours('Give it to nobody: who types it is you.'),
    refused: {
      'no-such-code': ours(
        'That code fits nobody: it was used, is older than 15 minutes, or was mistyped. Get a new one with /link.',
      ),
      'own-code': ours('That is this side’s own code. Type it on the other platform.'),
      'too-many': ours('Too many wrong codes. Wait a quarter of an hour.'),
    },
    linked: (name: string): Text => t`You are one member on both now: ${said(name)}.`,
    whatFollows: ours(
      'Entries, coats, pieces and reminders of both are yours wherever you write. What either may do, you may.',
    ),
    notHere: ours('In the demo anybody can be anybody, so nobody is linked here.'),
  },
  redact: {
    about: 'Take the note of an entry out for good, or somebody’s name out of what things are called',
    entry: 'The entry, such as 7-41',
    name: 'Somebody’s name that buckets, cups, sessions or recipes are called by',
    sure: 'yes does it; it can’t be undone',
    which: ours(
      'Say what to take out: the note of an entry, entry:7-41, or a name that things are called by, name:Wren.',
    ),
    noName: (typed: string): Text =>
      t`“${said(typed)}” is too little to look for: type the name as it stands there. Nothing was changed.`,
    mixes: (typed: string): Text =>
      t`Without “${said(typed)}” two things of one sort would be called the same. Call one of them otherwise first. Nothing was changed.`,
    askName: (typed: string): Text =>
      t`Take “${said(typed)}” out of whatever is called by it, in every entry, old and new? It can’t be undone, and nothing has been done yet. What is called so now is better renamed first.`,
    takeOut: (typed: string): Text => t`Take “${said(typed)}” out`,
    nameDone: ours(
      'The name is being taken out of what things are called. The entries stay; within minutes it is gone from the file.',
    ),
    none: (id: string): Text => t`${[id]} has no note.`,
    done: (id: string): Text => t`The note of ${[id]} is taken out for good. The entry stays.`,
    removed: 'note removed by a keeper',
  },
};
