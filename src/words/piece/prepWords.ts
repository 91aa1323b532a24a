import type { Resist } from '../../studio/resist/overnight.ts';
import type { Instant } from '../../studio/ids.ts';
import type { PieceEvent, PrepStep } from '../../studio/piece/pieceEvent.ts';
import type { Bisque } from '../../studio/piece/bisque.ts';
import type { Conflict, LaidOn } from '../../studio/piece/planPiece.ts';
import { coatWords } from '../resist/coatWords.ts';
import { dipWords } from './dipWords.ts';
import { coneText } from '../text/coneText.ts';
import { said, t, type Text } from '../text/text.ts';
import { dayAndTime } from '../text/dayAndTime.ts';

const short: Record<PrepStep, string> = {
  dust: 'dusted off',
  sheen: 'sheen gone',
  underglaze: 'underglaze on',
  resist: 'resist on',
  night: 'resist dry',
  bucket: 'bucket stirred and checked',
  wet: 'pre-wetted',
  carving: 'glaze brushed into the texture',
  dip: 'dipped',
  second: 'second layer on',
  peel: 'peeled',
  foot: 'foot clean',
};

export interface StepSetting {
  resist?: Resist;
  bucket: string;
  second?: string;
  runny: boolean;
  seconds?: number;
  /** How the glaze goes on, where it is no dip. */
  use?: LaidOn;
}

/** The glaze goes on (common practice). */
const laidOn = (bucket: string, use: LaidOn): Text =>
  use === 'brushing'
    ? t`Brush three even coats of ${said(bucket)} on with a full soft brush, each across the one before, each dull before the next.`
    : t`Spray ${said(bucket)} on in the booth, in thin passes while the piece turns; let it go dull between passes, so that nothing runs.`;

const step = (what: PrepStep, { resist, bucket, second, runny, seconds, use }: StepSetting): Text => {
  switch (what) {
    case 'dust':
      return t`Wipe the dust off with a damp sponge, inside too. After that, don’t touch it with bare hands.`;
    case 'sheen':
      return t`Wait until the wet sheen is gone. After a wrung-out sponge that often takes a few minutes; the plan allows 20.`;
    case 'underglaze':
      return t`Put underglaze or stain on thinly. Let it dry for about 30 min.`;
    case 'resist':
      return resist === undefined
        ? t`Resist on.`
        : t`Put the ${[coatWords.kinds[resist]]} on, and log it: /coat on.`;
    case 'night':
      return resist === 'tape'
        ? t`Press the edges of the tape down.`
        : resist === 'hot-wax'
          ? t`Let the wax go cold and hard.`
          : t`Let the resist dry through overnight.`;
    case 'bucket':
      return t`Stir ${said(bucket)} to the bottom and ask /water-or-stir.`;
    case 'wet':
      if (use)
        return t`Soft-fired bisque drinks the water out of the glaze. Wipe it with a wet sponge and wait until the sheen is gone.`;
      return t`Soft-fired bisque takes up more glaze. Dip it in water for a second and wait until the sheen is gone, or shorten the dip.`;
    case 'carving':
      if (use === 'brushing') return t`Work the first coat well into the carving or texture.`;
      if (use === 'spraying')
        return t`Brush glaze into deep carving or texture first: a spray does not reach it.`;
      return t`Brush glaze into the carving or texture, just before the dip, so that no air stays in it.`;
    case 'dip':
      if (use) return laidOn(bucket, use);
      return seconds === undefined
        ? t`Dip it in ${said(bucket)}.`
        : t`Dip it in ${said(bucket)} for ${[`${Number(seconds.toFixed(1))} s`]}.`;
    case 'second':
      return t`When the first coat looks dull, put the second layer on${second === undefined ? [] : t` from ${said(second)}`}. Mark how far it overlaps.`;
    case 'peel':
      return resist === 'tape'
        ? t`Pull the tape off while the glaze is dull, not dry.`
        : t`Peel the latex off when the glaze is on and dull, before it is fired.`;
    case 'foot':
      return second !== undefined && !runny
        ? t`Two layers run further than one: wipe the foot clean at least 6 mm up, and fire the pot on a clay cookie.`
        : runny
          ? t`It is a runny glaze: wipe the foot clean at least 6 mm up, and fire the pot on a clay cookie.`
          : t`Wipe the foot clean, 3 mm up.`;
  }
};

const conflict = (
  what: Conflict,
  first: (verdict: Extract<Conflict, { kind: 'bucket' }>['verdict']) => Text,
): Text => {
  switch (what.kind) {
    case 'too-early':
      return t`Your plan for ${dayAndTime(what.plannedFor)} is too early: the resist is dry ${dayAndTime(what.readyAt)}. Glaze sticks to damp wax.`;
    case 'closed':
      return what.opens === 'never'
        ? t`By its opening hours, the studio is closed then.`
        : t`The studio is closed ${dayAndTime(what.plannedFor)}; it opens ${dayAndTime(what.opens)}.`;
    case 'thick-underglaze':
      return t`Thick underglaze can make the glaze crawl. Use thin coats, or test it first.`;
    case 'never-dry':
      return t`By its opening hours, the studio is never open once the resist is dry. Ask a keeper.`;
    case 'bucket':
      return t`${[what.of === 'first' ? 'The bucket' : 'The second bucket']} isn't ready now. ${first(what.verdict)}`;
    case 'no-dip':
      return t`It is a ${[what.use]} bucket, so a dip time does not apply. ${[what.use === 'brushing' ? 'Coats make' : 'Passes make']} the thickness: try it on a test tile.`;
    case 'dip':
      return dipWords.noTime(what.why);
    case 'tight-bisque':
      return t`This bisque absorbs little, so the glaze builds up slowly and slides. Warm the piece, or ask a keeper to thicken the bucket.`;
    case 'wetted-wall':
      return t`A thin wall that was wetted is soon soaked. Glaze only the outside, with one quick dip.`;
    case 'resist-on-texture':
      return t`Resist runs into the texture, and no glaze sticks there.`;
  }
};

const bisques: Record<Bisque, string> = {
  soft: 'soft-fired',
  usual: 'fired as usual',
  tight: 'nearly tight',
};

const event = (what: PieceEvent): Text => {
  switch (what.kind) {
    case 'piece':
      return t`planned ${said(what.piece.name)} for bucket ${what.piece.bucket}`;
    case 'done':
      return t`p-${what.of}: ${[what.steps.map((one) => short[one]).join(', ')]}`;
    case 'undo':
      return t`took back p-${what.of}`;
  }
};

export const prepWords = {
  about: 'What to do to a piece before its dip, in order, with times; tick it off as you go',
  piece: 'The piece, in your own words, or one you planned before',
  bucket: 'The bucket to dip it in',
  second: 'The bucket for a second layer',
  surface: 'How its surface is',
  underglaze: 'Underglaze on it',
  resist: 'Resist on it',
  body: 'The clay body',
  absorption: 'How much water its bisque absorbs, in percent',
  cone: 'The cone that it was bisque-fired to',
  wall: 'Thickness of its wall',
  thickness: 'How thick the glaze should be',
  runny: 'Is the glaze a runny one?',
  when: 'When you plan to dip it',
  done: 'Steps that you have done',
  doneAt: 'When they were done, if not now: 2h ago',

  event,
  step,
  conflict,
  short: (what: PrepStep): string => short[what],
  title: (name: string, next: PrepStep | undefined, at: Instant | undefined, text: Text): Text =>
    next === undefined
      ? t`${said(name)} is ready for the kiln shelf.`
      : at === undefined
        ? t`${said(name)}: ${text}`
        : t`${said(name)}, from ${dayAndTime(at)}: ${text}`,
  goesOn: (id: string, done: boolean, title: Text): Text =>
    done ? t`Plan ${[id]} is done. ${title}` : t`You planned this before (${[id]}). ${title}`,
  another: t`For another piece with that name, give its bucket as well.`,
  factOn: (use: LaidOn | undefined): string =>
    use === undefined ? 'Dip' : use === 'brushing' ? 'Brush' : 'Spray',
  dipFact: (at: Instant, seconds: number | undefined): Text =>
    seconds === undefined
      ? t`${dayAndTime(at)} or later`
      : t`${dayAndTime(at)} or later, ${[`${Number(seconds.toFixed(1))} s`]}`,
  factBisque: 'Bisque',
  bisque: (bisque: Bisque, cone?: number): Text =>
    cone === undefined
      ? [bisques[bisque]]
      : t`${[bisques[bisque]]}, by the bisque’s own cone, ${[coneText(cone)]}`,
  coneOfBisque: t`cone: is the cone of the bisque firing, not of the glaze. If you meant the glaze’s, plan the piece again without it.`,
  factPiece: 'Piece',
  pieceFact: (id: string, done: number, all: number): Text => t`${[id]}: ${done} of ${all} steps done`,
  row: (n: number, text: Text, at: Instant, done: boolean, now: Instant): Text =>
    done ? t`✓ ${n}. ${text}` : at > now ? t`${n}. ${dayAndTime(at)}: ${text}` : t`${n}. ${text}`,
  ticked: (what: PrepStep, use?: LaidOn): Text =>
    t`Done: ${[what === 'dip' && use ? (use === 'brushing' ? 'brushed on' : 'sprayed on') : short[what]]}`,
  noBucket: t`Which bucket will it be dipped in? Add bucket: and its name. Nothing was saved.`,
  noPiece: (typed: string): Text =>
    t`You have no planned piece “${said(typed)}”. Plan it first: /prep piece:"tall jug" bucket:gg. Nothing was saved.`,
  notYours: (id: string): Text => t`${[id]} is somebody else's piece. Nothing was saved.`,
  noSuchStep: (steps: PrepStep[]): Text =>
    t`That is not one of its steps: ${[steps.join(', ')]}. Nothing was saved.`,
  allDone: t`Those steps are ticked off already.`,
  notACone: (typed: string): Text => t`“${said(typed)}” is not a cone. Cones look like 06, 04, 6.`,
  sameSecond: t`second: takes another bucket than the first layer. Nothing was saved.`,
  cautions: {
    'hot-wax': [coatWords.caution.fire],
    wax: [coatWords.caution.burnOut, coatWords.spilled],
    latex: [coatWords.caution.latex],
    tape: [],
  } satisfies Record<Resist, Text[]>,
};
