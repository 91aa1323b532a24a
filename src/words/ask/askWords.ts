import type { Deed } from '../../studio/logbook/deed.ts';
import type { NoteCaution, NoteCommand } from '../../studio/handbook.ts';
import type { Instant } from '../../studio/ids.ts';
import { coatWords } from '../resist/coatWords.ts';
import { dayAndTime } from '../text/dayAndTime.ts';
import { join, type Part, said, t, type Text } from '../text/text.ts';
import { bleachCaution } from '../verdict/bucketCautionWords.ts';
import { verdictWords } from '../verdict/verdictWords.ts';

const cautions: Record<NoteCaution, Text> = {
  gloves: t`If a bucket is marked for gloves, wear them: no bare fingers in it.`,
  caustic: verdictWords.caution('caustic'),
  'drawn-water': verdictWords.caution('drawn-water'),
  dust: verdictWords.caution('dust'),
  mixer: verdictWords.caution('mixer'),
  lifting: verdictWords.caution('lifting'),
  deflocculant: verdictWords.caution('deflocculant'),
  fire: coatWords.caution.fire,
  latex: coatWords.caution.latex,
  'burn-out': coatWords.caution.burnOut,
  bleach: bleachCaution,
  food: t`No glaze is called food-safe here: that takes a laboratory. Your local rules say what may be sold.`,
  metals: t`Some materials are toxic. Follow their safety sheets, your local rules and a qualified person, not this bot.`,
  'first-aid': t`This is first aid, not medical advice. Do what your emergency or poison line says before what this bot says.`,
};

const actions: Record<NoteCommand, string> = {
  'water-or-stir': 'Water or stir?',
  reading: 'Log a reading',
  added: 'Log what went in',
  stirred: 'Log a stir',
  sieved: 'Log a sieving',
  dose: 'Next flocculant dose',
  'dose-solution': 'Make the solution',
  'dose-deflocculant': 'Deflocculant',
  'dip-time': 'How long to dip',
  'dip-tile': 'Log a test tile',
  'dip-absorption': 'Measure absorption',
  prep: 'Prepare a piece',
  'coat-on': 'Note a resist coat',
  'coat-list': 'My coats',
  'coat-off': 'A coat has come off',
  'bucket-list': 'All buckets',
  'bucket-show': "The bucket's card",
  'bucket-log': "The bucket's log",
  'bucket-hold': 'Put it on hold',
  'batch-correct': 'Bring it into its window',
  'batch-blend': 'Mix two buckets',
  'batch-plan': 'Plan a batch',
  'batch-recipes': 'Recipes',
  'studio-vessel': 'Calibrate a cup',
  'studio-water': 'Note hard water',
  fired: 'Log how it came out',
  faults: 'Habits and faults',
  'remind-list': 'My reminders',
  'remind-by': 'Where reminders come',
  undo: 'Take an entry back',
  help: 'All commands',
};

const deeds: Record<Deed, string> = {
  stir: 'stir',
  sieve: 'sieving',
  addition: 'addition',
  reading: 'reading',
  any: 'entry',
};

/** Titles are ours, or a keeper's, who typed them. */
const titles = (all: Text[]): Text => join(all, '; ');

export const askWords = {
  about: 'A glaze-room question, answered from the notes and the bucket’s state',
  question: 'Your question, in your own words',
  bucket: 'The bucket that it is about',

  none: t`No note on that. Ask a keeper.`,
  tooLong: t`That is too long to look up. Ask it in one sentence, or ask a keeper.`,
  nearest: (near: Text[]): Text => t`Closest notes: ${titles(near)}.`,
  seeAlso: (also: Text[]): Text => t`See also: ${titles(also)}.`,
  behind: (title: Text, answer: Text): Text => t`${title}: ${answer}`,
  basis: (basis: string): Text => t`Basis: ${[basis]}.`,
  ownNote: (id: string, by: Part, at: Instant): Text =>
    t`The studio’s own note ${[id]}, by ${by}, ${{ at, show: 'day' }}.`,
  factOwn: 'More',
  factEntry: 'Entry',
  lastDone: (deed: Deed, at: Instant, by: Part): Text =>
    t`last ${[deeds[deed]]} ${{ at, show: 'ago' }}, ${dayAndTime(at)}, by ${by}.`,
  neverDone: (deed: Deed): Text =>
    deed === 'stir'
      ? t`no stir is logged. Ask around, then stir it.`
      : [`no ${deeds[deed]} is logged. Ask around.`],
  state: (gravity: Text | undefined, stirred: Text, needs: Text): Text =>
    t`Gravity ${gravity ?? ['not known']}; last stir ${stirred}. ${needs}`,
  caution: (caution: NoteCaution): Text => cautions[caution],
  action: (command: NoteCommand): Text => [actions[command]],
  read: (title: Text): Text => t`Read: ${title}`,
  ofBucket: (name: string): Text => t`About ${said(name)}`,
};
