import type { CoatEnd, CoatEvent } from '../../studio/resist/coatEvent.ts';
import type { CoatDoubt } from '../../studio/resist/coatDoubt.ts';
import type { Instant } from '../../studio/ids.ts';
import type { DryWhy, Resist } from '../../studio/resist/overnight.ts';
import { spanText } from '../text/measures.ts';
import { said, t, type Part, type Text } from '../text/text.ts';

const kinds: Record<Resist, string> = {
  wax: 'wax emulsion',
  'hot-wax': 'melted wax',
  latex: 'latex',
  tape: 'tape',
};

const dayAndClock = (at: Instant): Text => t`${{ at, show: 'day' }} ${{ at, show: 'clock' }}`;

const ends: Record<CoatEnd, string> = { glazed: 'glazed', peeled: 'peeled', washed: 'washed off' };

const did: Record<CoatEnd, string> = {
  glazed: 'I glazed over it',
  peeled: 'I peeled it',
  washed: 'I washed it off',
};

const event = (what: CoatEvent): Text => {
  switch (what.kind) {
    case 'on':
      return what.over === undefined
        ? t`put ${[kinds[what.resist]]} on ${said(what.pieces)}`
        : t`put another layer of ${[kinds[what.resist]]} on ${said(what.pieces)}`;
    case 'off':
      return t`${[ends[what.how]]}: c-${what.of}`;
    case 'not-mine':
      return t`said that c-${what.of} is somebody else's`;
    case 'undo':
      return t`took back c-${what.of}`;
  }
};

const why = (reason: DryWhy): Text[] => {
  switch (reason.because) {
    case 'at-once':
      return [['Tape needs no drying: press its edges down and glaze.']];
    case 'sets':
      return [t`Melted wax is hard once it is cold: about ${reason.minutes} min.`];
    case 'hours':
    case 'night':
    case 'opening': {
      const long = spanText(reason.dryHours);
      if (reason.noNight)
        return [
          t`It has to be dry through: ${[long]} on the clock, over at ${dayAndClock(reason.hoursEnd)}. By this studio’s rule it needs no night.`,
          ...(reason.because === 'opening' ? [['It is dry before the studio opens again.'] as Text] : []),
        ];
      const both = t`It has to be dry through: ${[long]} on the clock, over at ${dayAndClock(reason.hoursEnd)}, and one night, over at ${dayAndClock(reason.nightEnds)}.`;
      const last: Record<typeof reason.because, Text> = {
        hours: ['The hours end last.'],
        night: ['The night ends last.'],
        opening: ['It is dry before the studio opens again.'],
      };
      return [both, last[reason.because]];
    }
  }
};

export const coatWords = {
  about: 'Resist coats: wax, latex, tape, and when they are dry enough to glaze',
  onAbout: 'Say that you put a resist coat on; the answer is when it will be dry',
  listAbout: 'Your resist coats and when they are ready; all of them for a keeper',
  offAbout: 'Say that a coat is gone: glazed over, peeled or washed off',
  kindOf: 'wax (emulsion), hot-wax (melted), latex or tape',
  pieces: 'Which pieces, such as 3 bowls',
  whenOn: 'When it went on, if not now: last night 9pm',
  plannedFor: 'When you plan to glaze, if you know: tonight 7pm',
  temperature: 'How warm the room is, if known',
  humidity: 'Relative humidity of the room in percent, if known',
  whichAbout: 'The coat, such as c-12',
  how: 'glazed, peeled or washed; when not said: glazed, and peeled for latex and tape',
  kind: (resist: Resist): string => kinds[resist],
  event,
  why,
  ready: (at: Instant): Text => t`Ready ${dayAndClock(at)}.`,
  /** What may never be dry says so first. */
  doubtful: (doubt: CoatDoubt, at: Instant, title: Text | undefined): Text => [
    ...(doubt.why === 'cold'
      ? t`In this cold it may never become a film`
      : t`In air this damp it will hardly dry`),
    ...t`: not before ${dayAndClock(at)}, and only if it is clear and no longer tacky by then.`,
    ...(title ? [' ', ...title] : []),
  ],
  touch: (resist: Resist): Text =>
    resist === 'hot-wax'
      ? ['Touch it before you glaze: cold, hard, not tacky.']
      : [
          'Touch it before you glaze: clear, not milky, and not tacky. Milky or tacky is not dry, whatever the clock says.',
        ],
  readySince: (at: Instant): Text => t`Ready since ${dayAndClock(at)}.`,
  readyAtOnce: ['Ready at once.'] as Text,
  fits: (plan: Instant, at: Instant): Text =>
    t`Ready ${dayAndClock(at)}: your plan for ${dayAndClock(plan)} fits.`,
  tooEarly: (plan: Instant, at: Instant): Text =>
    t`${dayAndClock(plan)} is too early: ready ${dayAndClock(at)}.`,
  factCoat: 'Coat',
  fact: (id: string, resist: Resist, pieces: string, layer: number): Text =>
    layer === 1
      ? t`${[id]}, ${[kinds[resist]]} on ${said(pieces)}`
      : t`${[id]}, ${[kinds[resist]]} on ${said(pieces)}, layer ${layer}`,
  factOn: 'Went on',
  on: dayAndClock,
  hardly: (times: number, counted: number): Text =>
    t`Air this damp takes up water ${[Number.isFinite(times) ? `${times.toFixed(0)} times more slowly` : 'not at all, rather']} than at 20 °C and 50 %; only ${[counted.toFixed(0)]} times the hours are counted.`,
  slower: (factor: number): Text =>
    t`The room is colder or damper than usual: counted as ${[factor.toFixed(1)]} times the hours.`,
  layered: (before: string, layer: number): Text =>
    t`Layer ${layer} over ${[before]}: it all has to dry again, so the time starts anew.`,
  beforeLayer: (id: string, at: Instant): Text =>
    t`The same pieces had that coat on ${dayAndClock(at)} already (${[id]}), after the time you gave. If ${[id]} was the slip, take it back first: /undo entry:${[id]}. Nothing was saved.`,
  alsoOn: (id: string, resist: Resist, at: Instant | undefined): Text =>
    at === undefined
      ? t`The same pieces carry ${[kinds[resist]]} too (${[id]}).`
      : t`The same pieces carry ${[kinds[resist]]} too (${[id]}), ready ${dayAndClock(at)}: glaze when both are.`,
  sessionEarly: (name: string, at: Instant): Text =>
    t`${said(name)}, ${dayAndClock(at)}, is too early for it.`,
  firing: (at: Instant): Text => t`A firing is planned for ${dayAndClock(at)}: peel it before.`,
  neverOpens: [
    'By its hours the studio never opens, so nothing can be said to be ready. A keeper sets them: /studio hours monday:08:00-22:00.',
  ] as Text,
  longAgo: (at: Instant): Text =>
    t`${dayAndClock(at)} is more than two weeks ago: whatever it was is dry, or needs a new coat. Nothing was saved.`,
  tooMany: (typed: string, most: number): Text =>
    t`“${said(typed)}” is more than one line holds: ${most} pieces at most. Log them in batches, each with its own time. Nothing was saved.`,
  dontEarly: ['Don’t glaze over it before: glaze sticks to damp wax.'] as Text,
  dontEarlyLatex: ['Don’t glaze over it before, and don’t pull at it while it is damp.'] as Text,
  caution: {
    fire: [
      'Melted wax burns: a lid at hand, never water on it, power off and never unattended. Local rules come first.',
    ] as Text,
    latex: [
      'Latex smells of ammonia and some people are allergic to it: air the room, wear gloves. Never bleach with it or near it: a poisonous gas.',
    ] as Text,
    burnOut: ['It burns out in the kiln: fire only with the kiln room vented. Ask whoever fires.'] as Text,
    cold: [
      'Under 10 °C an emulsion may never become a film, however long it stands. Bring the pieces somewhere warmer.',
    ] as Text,
  },
  damp: [
    'In air this damp a coat may stay wet for days. Warm the room, dry its air, or bring the pieces somewhere drier.',
  ] as Text,
  mask: ['Latex is a mask: peel it when the glaze on it is dull, before the firing.'] as Text,
  spilled: ['Wax spilled on bare bisque comes off only in a new bisque firing.'] as Text,
  takeBack: ['That was a slip'] as Text,
  endedOne: (how: CoatEnd, id: string): Text => t`${[did[how]]} (${[id]})`,
  off: (id: string, how: CoatEnd, by: string): Text => t`${[id]} is ${[ends[how]]}, logged as ${[by]}.`,
  offEarly: (at: Instant): Text =>
    t`It was not due to be dry before ${dayAndClock(at)}: if glaze sticks to it, wipe it off while wet.`,
  none: ['No resist coats are waiting. /coat on kind:wax pieces:"3 bowls" notes one.'] as Text,
  listed: (count: number, ready: number): Text =>
    count === 1
      ? t`1 coat, ${[ready === 1 ? 'and it is ready' : 'not ready yet']}.`
      : t`${count} coats, ${[ready === 0 ? 'none' : ready === count ? 'all' : String(ready)]} ready.`,
  row: (id: string, pieces: string, by: Part | undefined): Text =>
    by === undefined ? t`${[id]} ${said(pieces)}` : t`${[id]} ${said(pieces)} · ${by}`,
  rowText: (
    resist: Resist,
    at: Instant | undefined,
    ready: boolean,
    { peel, doubt }: { peel: boolean; doubt: CoatDoubt | undefined },
  ): Text => {
    const name = kinds[resist];
    if (at === undefined) return t`${[name]}: the studio never opens`;
    const perhaps =
      doubt &&
      (doubt.why === 'cold'
        ? 'in this cold it may never become a film'
        : 'in air this damp it will hardly dry');
    if (perhaps !== undefined)
      return ready
        ? t`${[name]}: its hours are over, but ${[perhaps]}: touch it`
        : t`${[name]}: ${[perhaps]}; not before ${dayAndClock(at)}`;
    if (ready) return [peel ? `${name}: ready; peel it before the firing` : `${name}: ready`];
    return t`${[name]}: ready ${dayAndClock(at)}`;
  },
  which: (typed: string): Text => t`Which coat on “${said(typed)}”?`,
  noCoat: (typed: string): Text => t`There is no coat “${said(typed)}” on any piece. /coat list shows them.`,
  isOff: (typed: string): Text =>
    t`“${said(typed)}” is off already, or was taken back. /coat list shows what is on.`,
  notYours: (id: string): Text =>
    t`${[id]} is somebody else's coat. They or a keeper can say that it is off.`,
};
