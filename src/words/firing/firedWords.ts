import type { Fault, FiredEvent, FiredSaid, Stretch } from '../../studio/firing/firedEvent.ts';
import type { OutsideWindow } from '../../studio/firing/outsideWindow.ts';
import type { Amiss } from '../../studio/firing/amiss.ts';
import type { Bisque } from '../../studio/piece/bisque.ts';
import type { Instant } from '../../studio/ids.ts';
import type { GravityThen } from '../../studio/firing/bucketThen.ts';
import type { PrepStep } from '../../studio/piece/pieceEvent.ts';
import { capital } from '../text/capital.ts';
import { coneText, did } from './faultWords.ts';
import { flowWords } from '../verdict/flowWords.ts';
import { listed } from '../text/listed.ts';
import { gravityText, gravityWithin, secondsText, spanText, windowText } from '../text/measures.ts';
import { prepWords } from '../piece/prepWords.ts';
import { join, said, t, type Text } from '../text/text.ts';

const dayAndClock = (at: Instant): Text => t`${{ at, show: 'day' }} ${{ at, show: 'clock' }}`;

const howMany = ({ pieces, faulty = pieces }: Pick<FiredSaid, 'pieces' | 'faulty'>): string | undefined => {
  if (pieces === undefined || faulty === undefined) return undefined;
  if (faulty < pieces) return `${faulty} of ${pieces}`;
  return pieces === 1 ? 'the 1 piece' : `all ${pieces}`;
};

/** The result alone: `2 of 4 crawled`, `4 pieces of Gull Grey, good`. */
const outcome = (fired: Pick<FiredSaid, 'pieces' | 'faulty' | 'faults'>, bucket: Text): Text => {
  const { faults, pieces } = fired;
  if (faults.length === 0)
    return pieces === undefined
      ? t`${bucket}, good`
      : t`${[pieces === 1 ? '1 piece' : `${pieces} pieces`]} of ${bucket}, good`;
  const what = listed(faults.map((fault) => did[fault]));
  const many = howMany(fired);
  return many === undefined ? t`${bucket}, ${[what]}` : [`${many} ${what}`];
};

const event = (what: FiredEvent): Text => {
  if (what.kind === 'undo') return t`took back f-${what.of}`;
  const { bucket, over, faults } = what.fired;
  const where = over === undefined ? t`bucket ${bucket}` : t`bucket ${bucket} under ${over}`;
  const result = outcome(what.fired, where);
  return faults.length > 0 && what.fired.pieces !== undefined
    ? t`told of the kiln: ${result}, ${where}`
    : t`told of the kiln: ${result}`;
};

const amiss = (one: Amiss): string => {
  switch (one.is) {
    case 'over':
    case 'under':
      return `was ${one.by < 0.005 ? 'just' : gravityText(one.by)} ${one.is} its window then`;
    case 'rested':
      return one.hours === undefined
        ? 'had no stir logged before'
        : `was last stirred ${spanText(one.hours)} before`;
    case 'cake':
      return 'had a settled cake';
    case 'lumps':
      return 'had lumps or a skin in it';
    case 'on-hold':
      return 'was on hold';
    case 'thick':
    case 'thin':
      return `flowed ${one.is}`;
  }
};

const untold = { gravity: 'the gravity', flow: 'the flow', stir: 'the last stir' } as const;

const allAmiss = (name: string, all: readonly Amiss[]): Text => {
  const [first = '', ...others] = all.map(amiss);
  // One `was` does for two.
  const rest = others.map((one) => (first.startsWith('was ') ? one.replace(/^was /, '') : one));
  return t`${said(name)} ${[listed([first, ...rest])]}.`;
};

export const firedWords = {
  about: 'Say how it came out of the kiln; the answer is what its bucket was like when you dipped it',
  bucket: 'The bucket that it was dipped in',
  result: 'good, or the faults: crawling, running, pinholing …',
  pieces: 'How many, or how many of them: 2 of 4',
  dipped: 'When you dipped it: 3 days ago, tuesday 7pm',
  over: 'The bucket of a layer over it',
  piece: 'The piece, when it was planned (/prep) or had a resist coat: tall jug, p-12',
  body: 'The clay body',
  cone: 'The cone that the glaze was fired to: 6',
  kiln: 'Which kiln',
  bisque: 'soft, normal or hard, or its cone: 06',

  instead: 'The result of yours that this one replaces: f-12',

  event,
  listed: (
    fired: Pick<FiredSaid, 'pieces' | 'faulty' | 'faults'>,
    id: string,
    name: string,
    at: Instant,
  ): Text => {
    const many = fired.faults.length > 0 && fired.pieces !== undefined;
    const result = outcome(fired, [said(name)]);
    return t`${[id]} · ${{ at, show: 'day' }} · ${many ? t`${said(name)}: ${result}` : result}`;
  },
  kept: (fired: FiredSaid, name: string): Text => t`Kept: ${outcome(fired, [said(name)])}.`,
  was: (name: string, all: readonly Amiss[]): Text => (all.length === 0 ? [] : t` ${allAmiss(name, all)}`),
  damp: [' Its resist was not dry when it was dipped.'] as Text,
  ofFit: (faults: readonly Fault[]): Text =>
    t` ${[capital(listed(faults))]} may be fit between glaze and body rather than the bucket.`,

  factGravity: 'Gravity then',
  gravity: ({ value, u95, window, predicted }: GravityThen): Text =>
    t`${[gravityWithin(value, u95)]} (window ${[windowText(window)]})${predicted ? [', worked out by the logbook'] : []}`,
  noGravity: (measured: boolean | undefined): Text =>
    measured === undefined ? ['can’t be told'] : ['nobody had measured it lately'],
  factFlow: 'Flow then',
  flow: (flow: 'thin' | 'in' | 'thick'): Text => [flowWords[flow]],
  factStir: 'Last stir before',
  stir: (hours: number, limitHours: number, rested: boolean): Text =>
    t`${[spanText(hours)]} (${[rested ? 'over' : 'within']} its limit of ${[spanText(limitHours)]})`,
  neverStirred: ['none logged'] as Text,
  stirUnknown: ['can’t be told: the hour of the dip was not said'] as Text,

  understood: (dipped: Stretch | undefined, firing: Text): Text => {
    const when =
      dipped === undefined
        ? ['no date of its dip']
        : dipped.from === dipped.to
          ? t`dipped ${dayAndClock(dipped.from)}`
          : t`dipped ${{ at: dipped.from, show: 'day' }}`;
    return firing.length === 0 ? when : t`${when}, ${firing}`;
  },
  dippedAfter: (entry: string): Text =>
    t`Taken as dipped right after your own entry ${[entry]}. Another hour? Take this back and say it, such as dipped:"tuesday 9pm".`,
  dippedOn: ['The hour of the dip was not said: only what held all that day counts.'] as Text,
  notDated: [
    'When it was dipped was not said, so nothing can be set beside it: next time add dipped:"tuesday 7pm".',
  ] as Text,
  tooEarly: (name: string): Text => t`${said(name)} was not in the logbook yet.`,
  and: (name: string, all: readonly Amiss[]): Text => allAmiss(name, all),
  outside: (name: string, read: OutsideWindow): Text => {
    const what =
      read.what === 'gravity'
        ? `${gravityWithin(read.value, read.u95)}, outside its window of ${windowText(read.window)}`
        : `${secondsText(read.seconds)} in the flow cup, outside ${read.window.low} to ${read.window.high} s`;
    const kept =
      read.believed || read.what === 'gravity'
        ? read.believed
          ? ''
          : ', kept but not believed'
        : ', of which nobody knows whether it still held';
    return t`${said(name)} was read at ${[what]}, ${{ at: read.at, show: 'day' }} ${{ at: read.at, show: 'clock' }}${[kept]}.`;
  },
  cannotTell: (name: string, what: readonly ('gravity' | 'flow' | 'stir')[]): Text =>
    t`The logbook can’t tell ${[listed(what.map((one) => untold[one]))]} of ${said(name)} at the dip.`,
  nothingElse: ['Of the rest, nothing was amiss as far as the logbook knows.'] as Text,
  whatHour: [' At what time was it dipped? The bucket changed that day.'] as Text,
  sayHour: ['Say the time'] as Text,
  noResult: (id: string): Text => t`${[id]} is no result from the kiln. Nothing was saved.`,
  fine: (name: string): Text => t`As far as the logbook knows, nothing was amiss with ${said(name)}.`,
  sieved: (name: string, hours: number): Text => t`${said(name)} was sieved ${[spanText(hours)]} before.`,
  notSieved: (name: string): Text => t`No sieving of ${said(name)} is logged in the 30 days before.`,
  resist: (damp: boolean | undefined, readyAt: Instant | undefined): Text => {
    if (readyAt === undefined) return ['Its resist would never have been dry by the studio’s hours.'];
    if (damp === undefined)
      return t`Its resist was dry ${dayAndClock(readyAt)}: before or after the dip, the hour was not said.`;
    return damp
      ? t`Its resist was not dry before ${dayAndClock(readyAt)}.`
      : t`Its resist was dry ${dayAndClock(readyAt)}.`;
  },
  steps: (done: readonly PrepStep[], all: readonly PrepStep[]): Text => {
    const left = all.filter((step) => !done.includes(step));
    return left.length === 0
      ? ['Every step of its plan was ticked off.']
      : t`Of its plan, not ticked off before the dip: ${[left.map(prepWords.short).join(', ')]}.`;
  },
  bisqueWas: (bisque: Bisque): Text => t`Bisque: ${prepWords.bisque(bisque)}.`,
  firedTo: (cone: number | undefined, kiln: string | undefined, body: string | undefined): Text =>
    join(
      [
        ...(cone === undefined ? [] : [[`cone ${coneText(cone)}`] as Text]),
        ...(kiln === undefined ? [] : [t`kiln ${said(kiln)}`]),
        ...(body === undefined ? [] : [t`body ${said(body)}`]),
      ],
      ', ',
    ),
  takeBack: ['That was a slip'] as Text,

  goodAndFaults: (typed: string): Text =>
    t`“${said(typed)}”: good, or a fault, not both. Some were good? Say how many had it: pieces:"2 of 4". Nothing was saved.`,
  goodWithFaulty: ['Good pieces have no fault: which one was it, in result:? Nothing was saved.'] as Text,
  notPieces: (typed: string): Text => t`“${said(typed)}” is no number of pieces. Write it like 4, or 2 of 4.`,
  moreFaulty: (faulty: number, pieces: number): Text =>
    t`“${faulty} of ${pieces}”: more had the fault than there were. The number with it comes first: ${[`${pieces} of ${faulty}`]}?`,
  notBisque: (typed: string): Text =>
    t`“${said(typed)}” is no bisque. Say soft, normal or hard, or the cone: 06.`,
  sameLayer: ['The layer over it comes from another bucket. Nothing was saved.'] as Text,
  noPiece: (typed: string): Text =>
    t`No plan and no resist coat of yours is called “${said(typed)}”. Leave piece: out, or name it as in /prep or /coat list. Nothing was saved.`,
  cautions: {
    crawling: [],
    running: [],
    pinholing: [],
    blistering: ['Broken blisters have sharp edges: not for food or hands until they are ground.'],
    shivering: [
      'Shivering glaze comes off in sharp slivers, also later: keep it from food, hands and eyes, and wrap it before it goes in the bin.',
    ],
    crazing: [
      'Crazed ware holds what seeps into it. No glaze is called food-safe here, crazed least of all: that takes a laboratory and your local rules.',
    ],
    dunting: ['A dunted piece may break in the hand, with sharp edges: don’t use it.'],
  } satisfies Record<Fault, Text>,
};
