import type { Instant } from '../../studio/ids.ts';
import { dayAndTime } from '../text/dayAndTime.ts';
import { join, said, t, type Text, quotedNames } from '../text/text.ts';

type Typed = Readonly<Record<string, string>>;

/** What came out rather than went in. */
const outwards = ['draw-off', 'taken'];
const moved: Record<string, string> = {
  dry: 'dry batch',
  'draw-off': 'clear water',
  taken: 'glaze',
  other: 'something else',
};

const withUnit = (typed: string, unit: string): Text =>
  /^[\d.,\s/]+$/.test(typed) ? t`${said(typed)} ${[unit]}` : [said(typed)];

/** One option and its value, as a person would say it. */
const part = (name: string, typed: string): Text | undefined => {
  switch (name) {
    case 'gravity':
      return t`gravity ${said(typed)}`;
    case 'seconds':
      return withUnit(typed, 's');
    case 'weight':
      return t`weight ${withUnit(typed, 'g')}`;
    case 'look':
      return t`looks ${said(typed)}`;
    case 'seen':
      return t`seen: ${said(typed)}`;
    case 'temperature':
      return withUnit(typed, '°');
    case 'level':
      return /^[\d.,]+ ?\p{L}/u.test(typed) ? t`${said(typed)} in the pail` : t`${said(typed)} full`;
    case 'gap':
      return t`gap ${withUnit(typed, 'cm')}`;
    case 'from':
      return t`from bucket ${said(typed)}`;
    case 'vessel':
    case 'cup':
      return t`by ${said(typed)}`;
    case 'minutes':
      return withUnit(typed, 'min');
    case 'with':
      return t`with ${said(typed)}`;
    case 'mesh':
      return t`mesh ${said(typed)}`;
    case 'note':
      return t`note: “${said(typed)}”`;
    case 'stirred':
      return typed === 'no' ? t`not stirred` : t`stirred`;
    default:
      return undefined;
  }
};

const parts = (typed: Typed): Text[] =>
  Object.entries(typed)
    .map(([name, value]) => part(name, value))
    .filter((one) => one !== undefined);

const amount = ({ amount: much, what = 'other' }: Typed): Text => {
  const name = moved[what] ?? what;
  const verb = outwards.includes(what) ? 'came out' : 'went in';
  return much === undefined ? t`${[name]} ${[verb]}` : t`${said(much)} of ${[name]} ${[verb]}`;
};

/** What a draft would log, such as `gravity 1.46, 13 s, stirred`. */
const what = (command: string, typed: Typed): Text => {
  const rest = parts(typed);
  if (command === 'added') return join([amount(typed), ...rest], ', ');
  if (command === 'stirred') return join([['stirred'], ...rest], ', ');
  if (command === 'sieved') return join([['sieved'], ...rest], ', ');
  return rest.length === 0 ? t`a reading` : join(rest, ', ');
};

export const plainWords = {
  about: 'Say it in your own words; the answer shows what it would log, and you press',
  words: 'What you did or measured: gull grey 1.46 13 sec stirred',
  log: (name: string, command: string, typed: Typed): Text =>
    t`${said(name)}: ${what(command, typed)}. Log it?`,
  logOld: (name: string, command: string, typed: Typed, at: Instant): Text =>
    t`That was said ${{ at, show: 'ago' }}, ${dayAndTime(at)}. ${said(name)}: ${what(command, typed)}. Log it for that time?`,
  whichBucket: (command: string, typed: Typed): Text => t`Which bucket? I read: ${what(command, typed)}.`,
  noBucket: (typed: string, command: string, rest: Typed): Text =>
    t`There is no bucket “${said(typed)}”. Which one? I read: ${what(command, rest)}.`,
  whatMoved: (name: string, much: string): Text => t`${said(name)}: ${said(much)} of what?`,
  logFired: (bucket: string, result: string): Text =>
    t`Out of the kiln, ${said(bucket)}: ${said(result)}. Log it?`,
  byForm: t`That needs a few things: press, and fill them in.`,
  orType: (line: string): Text => t`Or type them: ${[line]}`,
  logIt: t`Log it`,
  logThen: t`Log it for that time`,
  with: (option: string, typed: string): Text => t`Log it with ${part(option, typed) ?? [said(typed)]}`,
  without: (typed: string): Text => t`Log it without “${said(typed)}”`,
  several: (names: readonly string[]): Text =>
    t`That tells of ${join(
      names.map((name) => t`${said(name)}`),
      ' and ',
    )}. Say one bucket on each line.`,
  noUnit: (name: string, typed: string): Text => t`${said(name)}: what is “${said(typed)}”? It has no unit.`,
  change: t`Change it`,
  ask: t`Ask it as a question`,
  factUnread: 'Not understood',
  unread: (runs: readonly string[]): Text => t`${quotedNames(runs)}. It goes in as a note.`,
  factBucket: 'Bucket',
  guessed: (typed: string, name: string): Text => t`“${said(typed)}” read as ${said(name)}`,
  none: t`I found nothing to log in that. Say the bucket and what you measured or did: gull grey 1.46 13 sec stirred.`,
  nothingHere: t`I found nothing to log in that, and no note on it.`,
  tooLong: (most: number): Text =>
    t`That is too long to find a reading in (${most} characters is the most). Say the bucket and the numbers alone: gull grey 1.46 13 sec stirred.`,
  howTo: t`To log something, say the bucket and what you measured or did: gull grey 1.46 13 sec stirred.`,
};
