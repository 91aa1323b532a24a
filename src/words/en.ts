import type { NotUndoable } from '../studio/logbook/undoable.ts';
import type { DoubtfulDose } from '../studio/batch/doubtfulDose.ts';
import type { AdditionProblem } from '../studio/batch/readAddition.ts';
import type { UnitSystem } from '../studio/settings/studio.ts';
import { askWords } from './ask/askWords.ts';
import { batchWords } from './batch/batchWords.ts';
import { bucketWords } from './bucket/bucketWords.ts';
import { chartWords } from './chartWords.ts';
import { coatWords } from './resist/coatWords.ts';
import { correctWords } from './batch/correctWords.ts';
import { deskWords } from './desk/deskWords.ts';
import { dipWords } from './piece/dipWords.ts';
import { doseText } from './text/doseText.ts';
import { doseWords } from './verdict/doseWords.ts';
import { faultWords } from './firing/faultWords.ts';
import { firedWords } from './firing/firedWords.ts';
import { exportWords } from './desk/exportWords.ts';
import { helpWords } from './desk/helpWords.ts';
import { labelWords } from './bucket/labelWords.ts';
import { logWords } from './bucket/logWords.ts';
import { massText, percentText, volumeAbout, volumeText } from './text/measures.ts';
import { madeForWords } from './bucket/madeForWords.ts';
import { noteWords } from './ask/noteWords.ts';
import { openQuestionWords } from './ask/openQuestionWords.ts';
import { optionWords } from './desk/optionWords.ts';
import { peopleWords } from './studio/peopleWords.ts';
import { plainWords } from './desk/plainWords.ts';
import { prepWords } from './piece/prepWords.ts';
import { readingWords } from './bucket/readingWords.ts';
import { recipeWords } from './batch/recipeWords.ts';
import { reminderWords } from './remind/reminderWords.ts';
import { roundWords } from './remind/roundWords.ts';
import { scheduleWords } from './studio/scheduleWords.ts';
import { studioWords } from './studio/studioWords.ts';
import { sightWords } from './bucket/sightWords.ts';
import { sumWords } from './ask/sumWords.ts';
import { said, t, type Text } from './text/text.ts';
import { unloggedWords } from './bucket/unloggedWords.ts';
import { bleachCaution } from './verdict/bucketCautionWords.ts';
import { verdictWords } from './verdict/verdictWords.ts';

const notUndone: Record<NotUndoable, (id: string) => Text> = {
  undone: (id) => t`${[id]} was taken back already.`,
  'an-undo': (id) => t`${[id]} is itself an undo. Log the entry again instead.`,
  'the-setup': (id) => t`${[id]} set the bucket up. A keeper can retire the bucket: /bucket retire.`,
  'not-yours': (id) => t`${[id]} is somebody else's. Its author or a keeper can take it back.`,
  'keepers-only': (id) => t`${[id]} is a setting of the studio. A keeper can take it back.`,
  'too-late': (id) => t`${[id]} is older than 15 minutes. A keeper can take it back.`,
};

const addition = (why: AdditionProblem, typed: string, units: UnitSystem): Text => {
  const it = t`“${said(typed)}”`;
  switch (why.kind) {
    case 'wants-volume':
      return t`Glaze goes by volume, such as 450 ml. Nothing was saved.`;
    case 'wants-weight':
      return t`Dry batch goes by weight, such as 300 g. Was it mixed glaze? Then say what:glaze, with a volume. Nothing was saved.`;
    case 'more-than-pail':
      return t`${it} is more than the pail holds (${[volumeText(why.pail, units)]}). Wrong unit? Nothing was saved.`;
    case 'over-the-rim':
      return t`${[volumeAbout(why.held, units)]} are in the pail, and it holds ${[volumeText(why.pail, units)]}: ${it} more does not fit. Is the unit wrong, or was some taken out first (/added what:taken)? Nothing was saved.`;
    case 'more-than-held':
      return t`${it} is more than ${[why.from ? 'the other bucket' : 'the bucket']} holds (about ${[volumeAbout(why.held, units)]}). Wrong unit? Nothing was saved.`;
    case 'no-dose': {
      const meant =
        why.meant &&
        ('mass' in why.meant ? massText(why.meant.mass, units) : volumeText(why.meant.volume, units));
      return t`${it} is ${[String(Number(why.times.toPrecision(why.times < 100 ? 1 : 2)))]} times a dose, which here is ${[doseText(why.dose)]} of solution. ${[meant === undefined ? 'Wrong unit?' : `${meant}?`]} Nothing was saved.`;
    }
    case 'more-than-water':
      return t`${it} of clear water can't have come off: about ${[volumeAbout(why.water, units)]} of water is in it, and some of that stays between the grains. Is the unit wrong, or the decimal point? If it was glaze, say what:taken. Nothing was saved.`;
  }
};

export const en = {
  someone: 'a former member',
  when: 'When, if not now: 2h ago, last night 9pm',
  note: 'Anything worth remembering',
  ask: askWords,
  batch: batchWords,
  bucket: bucketWords,
  chart: chartWords,
  coat: coatWords,
  correct: correctWords,
  desk: deskWords,
  dip: dipWords,
  dose: doseWords,
  fault: faultWords,
  fired: firedWords,
  export: exportWords,
  help: helpWords,
  label: labelWords,
  log: logWords,
  madeFor: madeForWords,
  notes: noteWords,
  openQuestion: openQuestionWords,
  option: optionWords,
  people: peopleWords,
  plain: plainWords,
  prep: prepWords,
  reading: readingWords,
  recipe: recipeWords,
  reminder: reminderWords,
  round: roundWords,
  schedule: scheduleWords,
  studio: studioWords,
  sight: sightWords,
  sum: sumWords,
  unlogged: unloggedWords,
  verdict: verdictWords,
  stirred: {
    about: 'Say that you stirred a bucket to the bottom',
    minutes: 'For how many minutes',
    with: 'With what',
    look: 'How it runs, seen right after the stir',
  },
  sieved: {
    about: 'Say that you sieved a bucket',
    mesh: 'Through which mesh',
    never: t`This glaze is marked never to be sieved: its specks may be gone. Tell a keeper.`,
    otherMesh: (mesh: number, own: number): Text => t`Its own mesh is ${own}, not ${mesh}.`,
  },
  waterOrStir: { about: 'What does this bucket need now?' },
  added: {
    about: 'Say what went into a bucket, or came out of it',
    what: 'What it was',
    amount: 'How much: 450 ml, 300 g',
    from: 'Where the glaze came from: another bucket, or own (a tray, or fresh of the same mix)',
    itsOwn: 'its own: back from a tray, or a fresh batch of the same mix',
    gravity: 'Gravity of the added glaze, if you know it',
    strength: 'How much Epsom salt is in a litre of the solution, if it is not saturated',
    remake: 'Is the bucket a fresh batch now? Then flocculant is counted from zero',
    sameBucket: t`A bucket can’t be topped up from itself. Its own glaze, back from a tray? Say from:own. Nothing was saved.`,
    sure: 'Is the large amount right?',
    doubtful: (doubt: DoubtfulDose, typed: string): Text =>
      doubt.what === 'flocculant'
        ? t`“${said(typed)}” of flocculant is ${[String(Math.round(doubt.times))]} doses: one dose here is ${[doseText(doubt.dose)]} of solution. Did that much go in? Nothing is saved yet.`
        : t`“${said(typed)}” of deflocculant is ${[percentText(doubt.percent)]} of the dry powder. Deflocculant goes in by the drop, here less than ${[massText(doubt.most)]} in all. Did that much go in? Nothing is saved yet.`,
    reallyAdded: t`Yes, that much went in`,
    change: t`Another amount`,
    bleach: bleachCaution,
    acid: t`Vinegar and other acids, ammonia and latex: never with bleach, which makes a poisonous gas with them. Has bleach been in this bucket? Then don’t stir it.`,
    bothPoured: t`The logbook says that bleach went into this bucket, and so did something that makes poisonous gas with bleach. Don’t breathe over it: leave the room, open the windows from outside, and call a keeper. Whoever coughs calls a poison centre or a doctor.`,
    mixedUnknown: t`You did not say which glaze that was. Was it the bucket’s own, back from a tray? Take the entry back and say from:own. Was it from another bucket? Say from: and that bucket’s name, because its hazards come with it.`,
    mixed: (into: number, name: string, from: number): Text =>
      t`Glaze from another bucket went in, so this bucket is on hold until a keeper has looked at it. If two buckets hold the same glaze, a keeper can say so before one is poured into the other: /bucket change bucket:${into} same-as:${from} (${said(name)}).`,
    mixedBrings: (marks: readonly string[]): Text =>
      t`It brings ${[marks.join(', ')]} with it, and the bucket is now marked with that too.`,
    noChildren: t`Children may no longer use this bucket, unless a keeper allows it again.`,
    alsoTaken: (entry: string, name: string): Text => t`Taken out of ${said(name)} as ${[entry]}.`,
    asSaturated: t`Counted as saturated Epsom salt solution.`,
    keepersHands: t`Only keepers add dry batch and deflocculant. This is logged; tell a keeper.`,
    problem: addition,
  },
  undo: {
    about: 'Take an entry back; the log shows the entry and that it was taken back',
    entry: 'The entry, such as 7-41; left out, the last that you logged',
    last: (id: string): Text => t`The last that you logged is ${[id]}. Take it back?`,
    lastIn: (id: string, bucket: string): Text =>
      t`The last that you logged is ${[id]}, in ${said(bucket)}. Take it back?`,
    takeBack: t`Take it back`,
    noneOfYours: t`There is nothing of yours to take back. A member can do it for fifteen minutes; a keeper can take back any entry, such as /undo entry:7-41. /bucket log shows the entries.`,
    none: (id: string): Text => t`There is no entry ${[id]}. /bucket log shows them.`,
    not: (why: NotUndoable, id: string): Text => notUndone[why](id),
    tookBack: (what: Text): Text => t`took back ${what}`,
    done: (id: string, other?: string): Text =>
      other === undefined ? t`Took back ${[id]}.` : t`Took back ${[id]}, and ${[other]} in the other bucket.`,
  },
};
