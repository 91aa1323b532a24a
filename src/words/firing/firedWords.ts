import { present } from '../../present.ts';
import type { Fault, FiredEvent, FiredSaid, TimeSpan } from '../../studio/firing/firedEvent.ts';
import type { OutsideWindow } from '../../studio/firing/outsideWindow.ts';
import type { DipProblem } from '../../studio/firing/problemsAtDip.ts';
import type { Bisque } from '../../studio/piece/bisque.ts';
import type { Instant } from '../../studio/ids.ts';
import type { GravityThen } from '../../studio/firing/bucketThen.ts';
import type { PrepStep } from '../../studio/piece/pieceEvent.ts';
import { roughSpanText } from '../text/agoText.ts';
import { capital } from '../text/capital.ts';
import { coneText } from '../text/coneText.ts';
import { did } from './faultWords.ts';
import { flowWords } from '../verdict/flowWords.ts';
import { listed } from '../text/listed.ts';
import {
  gravityText,
  gravityWithin,
  secondsText,
  secondsWindowText,
  spanText,
  windowText,
} from '../text/measures.ts';
import { prepWords } from '../piece/prepWords.ts';
import { join, said, t, type Text } from '../text/text.ts';
import { dayAndTime } from '../text/dayAndTime.ts';

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
    ? t`logged from the kiln: ${result}, ${where}`
    : t`logged from the kiln: ${result}`;
};

const amiss = (one: DipProblem): string => {
  switch (one.is) {
    case 'over':
    case 'under':
      return `was ${one.by < 0.005 ? 'just' : gravityText(one.by)} ${one.is} its window then`;
    case 'rested':
      return one.hours === undefined
        ? 'had no stir logged before the dip'
        : `was last stirred ${roughSpanText(one.hours)} before`;
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

const allAmiss = (name: string, all: readonly DipProblem[]): Text => {
  const [first = '', ...others] = all.map(amiss);
  // One `was` does for two.
  const rest = others.map((one) => (first.startsWith('was ') ? one.replace(/^was /, '') : one));
  return t`${said(name)} ${[listed([first, ...rest])]}.`;
};

export const firedWords = {
  about: 'Log how it came out of the kiln; the answer shows its bucket as it was at the dip',
  bucket: 'The bucket that it was dipped in',
  result: 'How it came out: good, or its faults',
  pieces: 'How many pieces, or how many of them had the fault',
  dipped: 'When you dipped it',
  when: 'When it came out of the kiln, if not now: yesterday 9am',
  over: 'The bucket of a second layer over it',
  piece: 'The piece, if you planned it or put a resist coat on it',
  body: 'The clay body',
  cone: 'The cone that the glaze was fired to',
  kiln: 'Which kiln',
  bisque: 'The bisque: soft, normal or hard, or its cone',

  instead: 'Your earlier result that this one replaces',

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
  was: (name: string, all: readonly DipProblem[]): Text =>
    all.length === 0 ? [] : t` ${allAmiss(name, all)}`,
  damp: t` Its resist was not dry when it was dipped.`,
  ofFit: (faults: readonly Fault[]): Text =>
    t` ${[capital(listed(faults))]} may come from the fit between glaze and body, not from the bucket.`,

  factGravity: 'Gravity then',
  gravity: ({ value, u95, window, predicted }: GravityThen): Text =>
    t`${[gravityWithin(value, u95)]} (window ${[windowText(window)]})${predicted ? t`, calculated from the logbook` : []}`,
  noGravity: (measured: boolean | undefined): Text =>
    measured === undefined ? t`not known` : t`nobody had measured it lately`,
  factFlow: 'Flow then',
  flow: (flow: 'thin' | 'in' | 'thick'): Text => [flowWords[flow]],
  factStir: 'Last stir before',
  stir: (hours: number, limitHours: number, rested: boolean): Text =>
    t`${[roughSpanText(hours)]} (${[rested ? 'over' : 'within']} its limit of ${[spanText(limitHours)]})`,
  neverStirred: t`none logged`,
  stirUnknown: t`not known: you did not say at what hour you dipped`,

  understood: (dipped: TimeSpan | undefined, firing: Text): Text => {
    const when =
      dipped === undefined
        ? t`date of the dip not given`
        : dipped.from === dipped.to
          ? t`dipped ${dayAndTime(dipped.from)}`
          : t`dipped ${{ at: dipped.from, show: 'day' }}`;
    return firing.length === 0 ? when : t`${when}, ${firing}`;
  },
  dippedAfter: (entry: string): Text =>
    t`This assumes that you dipped right after your entry ${[entry]}. If not, take this back and give the time, such as dipped:"tuesday 9pm".`,
  dippedOn: t`You did not say at what hour you dipped, so only what was true all that day counts.`,
  notDated: t`You did not say when you dipped, so the bucket’s state then is not known. Next time add dipped:"tuesday 7pm".`,
  tooEarly: (name: string): Text => t`${said(name)} was not in the logbook yet.`,
  and: allAmiss,
  outside: (name: string, read: OutsideWindow): Text => {
    const what =
      read.what === 'gravity'
        ? `${gravityWithin(read.value, read.u95)}, outside its window of ${windowText(read.window)}`
        : `${secondsText(read.seconds)} in the flow cup, outside ${secondsWindowText(read.window)}`;
    const kept =
      read.believed || read.what === 'gravity'
        ? read.believed
          ? ''
          : ', which does not count'
        : ', but that may have changed before the dip';
    return t`${said(name)} was read at ${[what]}, ${dayAndTime(read.at)}${[kept]}.`;
  },
  cannotTell: (name: string, what: readonly ('gravity' | 'flow' | 'stir')[]): Text =>
    t`The logbook does not know ${[listed(what.map((one) => untold[one]))]} of ${said(name)} at the dip.`,
  nothingElse: t`As far as the logbook knows, nothing else was wrong.`,
  whatHour: t` At what time did you dip it? The bucket changed that day.`,
  sayHour: t`Say the time`,
  noResult: (id: string): Text => t`${[id]} is not a result from the kiln. Nothing was saved.`,
  fine: (name: string): Text => t`As far as the logbook knows, nothing was wrong with ${said(name)}.`,
  sieved: (name: string, hours: number): Text =>
    t`${said(name)} was sieved ${[roughSpanText(hours)]} before.`,
  notSieved: (name: string): Text => t`No sieving of ${said(name)} is logged in the 30 days before.`,
  resist: (damp: boolean | undefined, readyAt: Instant | undefined): Text => {
    if (readyAt === undefined) return t`By the studio’s opening hours, its resist would never have been dry.`;
    if (damp === undefined)
      return t`Its resist was dry ${dayAndTime(readyAt)}. Whether that was before the dip is not known: the hour was not given.`;
    return damp
      ? t`Its resist was not dry before ${dayAndTime(readyAt)}.`
      : t`Its resist was dry ${dayAndTime(readyAt)}.`;
  },
  steps: (done: readonly PrepStep[], all: readonly PrepStep[]): Text => {
    const left = all.filter((step) => !done.includes(step));
    return left.length === 0
      ? t`Every step of its plan was ticked off.`
      : t`These steps of its plan were not ticked off before the dip: ${[left.map(prepWords.short).join(', ')]}.`;
  },
  bisqueWas: (bisque: Bisque): Text => t`Bisque: ${prepWords.bisque(bisque)}.`,
  firedTo: (cone: number | undefined, kiln: string | undefined, body: string | undefined): Text =>
    join(
      present([
        cone !== undefined && t`cone ${[coneText(cone)]}`,
        kiln !== undefined && t`kiln ${said(kiln)}`,
        body !== undefined && t`body ${said(body)}`,
      ]),
      ', ',
    ),
  /** The next step after a fault that has no caution of its own. */
  next: {
    'too-thin': t`Next time stir to the bottom, measure, and dip a tile for longer before the pot.`,
    'too-thick': t`Next time measure first, and dip a tile for a shorter time before the pot.`,
    dull: t`Look at the coat, the cone and the place in the kiln first; then at a bucket that was not stirred to the bottom.`,
    'off-colour': t`Compare seconds, body and gravity with the tile’s, and ask whether the bucket was stirred to the bottom.`,
  } as Partial<Record<Fault, Text>>,
  takeBack: t`Undo this`,

  goodAndFaults: (typed: string): Text =>
    t`“${said(typed)}” says both good and a fault. If only some had the fault, say how many: pieces:"2 of 4". Nothing was saved.`,
  goodWithFaulty: t`You gave a number with a fault, but no fault. Name it in result:. Nothing was saved.`,
  notPieces: (typed: string): Text =>
    t`“${said(typed)}” is not a number of pieces. Type it like 4, or 2 of 4.`,
  moreFaulty: (faulty: number, pieces: number): Text =>
    t`“${faulty} of ${pieces}” is more faulty pieces than there were. The faulty ones come first. Did you mean ${[`${pieces} of ${faulty}`]}?`,
  notBisque: (typed: string): Text =>
    t`“${said(typed)}” is not a kind of bisque. Say soft, normal or hard, or the cone: 06.`,
  sameLayer: t`over: takes another bucket than the first layer. Nothing was saved.`,
  noPiece: (typed: string): Text =>
    t`You have no plan and no resist coat called “${said(typed)}”. Leave piece: out, or use the name from /prep or /coat list. Nothing was saved.`,
  cautions: {
    blistering: t`Broken blisters have sharp edges: not for food or hands until they are ground.`,
    shivering: t`Shivering glaze comes off in sharp slivers, now or later. Keep the pot away from food, hands and eyes, and wrap it before you throw it away.`,
    crazing: t`Food and liquid seep into crazed ware and stay there. No glaze is called food-safe here, crazed least of all: that takes a laboratory and your local rules.`,
    dunting: t`A dunted piece may break in the hand, with sharp edges: don’t use it.`,
    dull: t`A dry or rough surface may leach and scratches easily. No glaze is called food-safe here: that takes a laboratory and your local rules.`,
  } as Partial<Record<Fault, Text>>,
};
