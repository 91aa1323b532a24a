import type { Instant } from '../../studio/ids.ts';
import { said, t, type Text } from '../text/text.ts';

export const peopleWords = {
  forget: {
    about: 'Make the bot forget your name and your words, on every platform',
    sure: 'Really forget me; without this, you see first what goes and what stays',
    ask: t`Do you want to be forgotten? Nothing has been done yet. It can’t be undone.`,
    factGoes: 'What goes',
    goes: t`your name, how each platform knows you, your sign-ins, your notes, what you called your pots, your reminders, what you wrote in the room.`,
    factStays: 'What stays',
    stays: t`what was done to the buckets and when, by “a former member”: the bot calculates with it.`,
    others:
      'If somebody else’s note names you, it stays until a keeper removes it with /redact. Older backups hold your name until they are deleted. Messages that Discord already shows stay there; delete them in Discord.',
    press: t`Forget me`,
    done: t`You are forgotten here. If you use the bot again, you are somebody new to it.`,
    onlyKeeper: t`You are the only named keeper, so nothing was done. Name another first: /studio keeper member:…`,
    later: t`The last traces are gone from the file within minutes.`,
  },
  link: {
    about: 'Link your accounts on two platforms: get a code here, type it there',
    code: 'The code that /link gave you on the other platform',
    sure: 'For keepers: confirm that the code is your own',
    isThatYou: (name: string): Text =>
      t`This code belongs to ${said(name)}. Go on only if that is you: from then on, ${said(name)} may do everything that you may.`,
    factIfSo: 'If that is you',
    surely: (code: string): Text => t`/link code:${said(code)} sure:yes`,
    offered: (code: string, until: Instant): Text =>
      t`Your code is ${[code]}. It works once, until ${{ at: until, show: 'clock' }}.`,
    factElsewhere: 'On the other platform',
    elsewhere: (code: string): Text => t`/link code:${[code]}`,
    factRoom: 'In the local room',
    atTheDoor: t`type it where you sign in, in place of the passcode, with a name and a password of your own.`,
    tellNobody: t`Keep it secret: whoever types it becomes you.`,
    refused: {
      'no-such-code': t`That code does not work: it was used, is older than 15 minutes, or was mistyped. Get a new one with /link.`,
      'own-code': t`That code is from this platform. Type it on the other one.`,
      'too-many': t`Too many wrong codes. Wait a quarter of an hour.`,
    },
    linked: (name: string): Text => t`Your accounts are linked. On both you are ${said(name)}.`,
    whatFollows: t`The entries, coats, pieces and reminders of both accounts are now yours on both. You may do what either could.`,
    notHere: t`In the demo anybody can take any name, so accounts can’t be linked.`,
  },
  redact: {
    about: 'Remove an entry’s note for good, or a person’s name from what things are called',
    entry: 'The entry, such as 7-41',
    name: 'A person’s name that stands in the names of buckets, cups, sessions or recipes',
    sure: 'Really do it; it can’t be undone',
    which: t`Say what to remove: the note of an entry (entry:7-41), or a person’s name from the names of things (name:Wren).`,
    noName: (typed: string): Text =>
      t`“${said(typed)}” is too short to search for. Type the name as it stands there. Nothing was changed.`,
    mixes: (typed: string): Text =>
      t`Without “${said(typed)}”, two things of the same kind would have the same name. Rename one of them first. Nothing was changed.`,
    askName: (typed: string): Text =>
      t`Remove “${said(typed)}” from the names of things, in every entry, old and new? Nothing has been done yet. It can’t be undone. It is better to rename first whatever has that name now.`,
    takeOut: (typed: string): Text => t`Remove “${said(typed)}”`,
    nameDone: t`The name is being removed from the names of things. The entries stay. Within minutes it is gone from the file.`,
    none: (id: string): Text => t`${[id]} has no note.`,
    done: (id: string): Text => t`The note of ${[id]} is removed for good. The entry stays.`,
    removed: 'note removed by a keeper',
  },
};
