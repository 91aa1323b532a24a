import type { Resist } from '../../studio/resist/overnight.ts';
import type { Instant } from '../../studio/ids.ts';
import type { PieceEvent, PrepStep } from '../../studio/piece/pieceEvent.ts';
import type { Bisque } from '../../studio/piece/bisque.ts';
import type { Conflict } from '../../studio/piece/planPiece.ts';
import { coatWords } from '../resist/coatWords.ts';
import { dipWords } from './dipWords.ts';
import { said, t, type Text } from '../text/text.ts';

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

const dayAndClock = (at: Instant): Text => t`${{ at, show: 'day' }} ${{ at, show: 'clock' }}`;

export interface StepSetting {
  resist?: Resist;
  bucket: string;
  second?: string;
  runny: boolean;
  seconds?: number;
}

const step = (what: PrepStep, { resist, bucket, second, runny, seconds }: StepSetting): Text => {
  switch (what) {
    case 'dust':
      return ['Dust it off with a damp sponge, inside too; then no bare hands on it.'];
    case 'sheen':
      return ['Wait until the sheen is gone: often a few minutes after a wrung sponge; the plan allows 20.'];
    case 'underglaze':
      return ['Underglaze or stain, thin; let it dry, about 30 min.'];
    case 'resist':
      return resist === undefined
        ? ['Resist on.']
        : t`Put the ${[coatWords.kind(resist)]} on, and log it: /coat on.`;
    case 'night':
      return resist === 'tape'
        ? ['Press the edges of the tape down.']
        : resist === 'hot-wax'
          ? ['Let the wax go cold and hard.']
          : ['Let the resist dry through: overnight.'];
    case 'bucket':
      return t`Stir ${said(bucket)} to the bottom and ask /water-or-stir.`;
    case 'wet':
      return [
        'Soft-fired bisque drinks more: dip it in water for a second, wait until the sheen is gone; or shorten the dip.',
      ];
    case 'carving':
      return ['Brush glaze into the carving or texture, just before the dip, so that no air stays in it.'];
    case 'dip':
      return seconds === undefined
        ? t`Dip it in ${said(bucket)}.`
        : t`Dip it in ${said(bucket)} for ${[`${Number(seconds.toFixed(1))} s`]}.`;
    case 'second':
      return t`When the coat is dull, second layer${second === undefined ? [] : t` from ${said(second)}`}: mark how far it overlaps.`;
    case 'peel':
      return resist === 'tape'
        ? ['Pull the tape off while the glaze is dull, not dry.']
        : ['Peel the latex off when the glaze is on and dull, before it is fired.'];
    case 'foot':
      return runny
        ? [
            'Keep the foot clear: 6 mm or more, it is a runny glaze; wipe it, and put a cookie of clay under it.',
          ]
        : ['Keep the foot clear: 3 mm; wipe it.'];
  }
};

const conflict = (
  what: Conflict,
  first: (verdict: Extract<Conflict, { kind: 'bucket' }>['verdict']) => Text,
): Text => {
  switch (what.kind) {
    case 'too-early':
      return t`Your plan for ${dayAndClock(what.plannedFor)} is too early: the resist is dry ${dayAndClock(what.readyAt)}. Glaze sticks to damp wax.`;
    case 'closed':
      return what.opens === 'never'
        ? t`The studio is closed then, by its hours.`
        : t`The studio is closed ${dayAndClock(what.plannedFor)}; it opens ${dayAndClock(what.opens)}.`;
    case 'thick-underglaze':
      return ['Thick underglaze can make the glaze crawl: thin coats, or a test first.'];
    case 'never-dry':
      return ['By the studio’s hours nobody is there when the resist is dry. Ask a keeper.'];
    case 'bucket':
      return t`${[what.of === 'first' ? 'The bucket' : 'The second bucket']} isn't ready now. ${first(what.verdict)}`;
    case 'dip':
      return dipWords.noTime(what.why);
    case 'tight-bisque':
      return [
        'This bisque absorbs little: the coat builds slowly and slides. Warm the piece, or thicken the bucket by a keeper’s hand.',
      ];
    case 'wetted-wall':
      return ['A thin wall that was wetted is soon full: only the outside, and one quick dip.'];
    case 'resist-on-texture':
      return ['Resist runs into texture: where it is, no glaze holds.'];
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
  piece: 'The piece: tall jug; or one planned before: p-12',
  bucket: 'The bucket that it is dipped in',
  second: 'The bucket of a second layer',
  surface: 'smooth, textured or carved',
  underglaze: 'none, thin or thick',
  resist: 'wax, hot-wax, latex or tape',
  body: 'The clay body',
  absorption: 'What its bisque absorbs, in per cent',
  cone: 'The cone that it was bisque-fired to: 06',
  wall: 'Thickness of its wall',
  thickness: 'Wanted thickness of the coat',
  runny: 'Is the glaze a runny one?',
  when: 'When you plan to dip it: tonight 7pm',
  done: 'Steps that are done: dust, sheen, dip',

  event,
  step,
  conflict,
  short: (what: PrepStep): string => short[what],
  title: (name: string, next: PrepStep | undefined, at: Instant | undefined, text: Text): Text =>
    next === undefined
      ? t`${said(name)} is ready for the kiln shelf.`
      : at === undefined
        ? t`${said(name)}: ${text}`
        : t`${said(name)}, from ${dayAndClock(at)}: ${text}`,
  goesOn: (id: string, done: boolean, title: Text): Text =>
    done ? t`Plan ${[id]} is done. ${title}` : t`Plan ${[id]} goes on. ${title}`,
  another: ['For another piece of that name, name its bucket: /prep piece: bucket:.'] as Text,
  factDip: 'Dip',
  dipFact: (at: Instant, seconds: number | undefined): Text =>
    seconds === undefined
      ? t`${dayAndClock(at)} or later`
      : t`${dayAndClock(at)} or later, ${[`${Number(seconds.toFixed(1))} s`]}`,
  factBisque: 'Bisque',
  bisque: (bisque: Bisque): Text => [bisques[bisque]],
  factPiece: 'Piece',
  pieceFact: (id: string, done: number, all: number): Text => t`${[id]}: ${done} of ${all} steps done`,
  row: (n: number, text: Text, at: Instant, done: boolean, now: Instant): Text =>
    done ? t`✓ ${n}. ${text}` : at > now ? t`${n}. ${dayAndClock(at)}: ${text}` : t`${n}. ${text}`,
  ticked: (what: PrepStep): Text => t`Done: ${[short[what]]}`,
  noBucket: ['Which bucket will it be dipped in? Add bucket: and its name. Nothing was saved.'] as Text,
  noPiece: (typed: string): Text =>
    t`No piece of yours is planned as “${said(typed)}”. Plan it first: /prep piece:"tall jug" bucket:gg. Nothing was saved.`,
  notYours: (id: string): Text => t`${[id]} is somebody else's piece. Nothing was saved.`,
  noSuchStep: (steps: PrepStep[]): Text => t`Its steps are: ${[steps.join(', ')]}. Nothing was saved.`,
  allDone: ['Those are ticked off already.'] as Text,
  notACone: (typed: string): Text => t`“${said(typed)}” is no cone. They look like 06, 04, 6.`,
  sameSecond: ['The second layer comes from another bucket. Nothing was saved.'] as Text,
  cautions: {
    'hot-wax': [
      'Melted wax: fire and burns. Lid at hand, power off after, never water on it, never unattended. Your local rules come first.',
    ],
    wax: [
      'Wax burns out in the kiln: vent the kiln room while it fires. Wax spilled on bisque comes off only in a new bisque firing.',
    ],
    latex: ['Latex: allergy, and ammonia when it dries: air the room. Never bleach near it.'],
    tape: [],
  } satisfies Record<Resist, Text>,
};
