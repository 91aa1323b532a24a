import { present } from '../../present.ts';
import type { CoatEnd, CoatEvent } from '../../studio/resist/coatEvent.ts';
import type { CoatDoubt } from '../../studio/resist/coatDoubt.ts';
import type { Instant } from '../../studio/ids.ts';
import type { DryWhy, Resist } from '../../studio/resist/overnight.ts';
import { spanText } from '../text/measures.ts';
import { type Part, said, t, type Text } from '../text/text.ts';
import { dayAndTime } from '../text/dayAndTime.ts';

const kinds: Record<Resist, string> = {
  wax: 'wax emulsion',
  'hot-wax': 'melted wax',
  latex: 'latex',
  tape: 'tape',
};

const ends: Record<CoatEnd, string> = { glazed: 'glazed over', peeled: 'peeled off', washed: 'washed off' };

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
      return t`marked c-${what.of} as ${[ends[what.how]]}`;
    case 'not-mine':
      return t`said that c-${what.of} is somebody else's`;
    case 'undo':
      return t`took back c-${what.of}`;
  }
};

const why = (reason: DryWhy): Text[] => {
  switch (reason.because) {
    case 'at-once':
      return [['Tape needs no drying. Press its edges down and glaze.']];
    case 'sets':
      return [t`Melted wax is hard once it is cold, after about ${reason.minutes} min.`];
    case 'hours':
    case 'night':
    case 'opening': {
      const long = spanText(reason.dryHours);
      const opening = t`It is dry before the studio opens again, so you can glaze once it opens.`;
      if (reason.noNight)
        return present([
          t`It has to dry through, which takes ${[long]}, until ${dayAndTime(reason.hoursEnd)}. This studio does not ask for a night as well.`,
          reason.because === 'opening' && opening,
        ]);
      const both = t`It has to dry through, which takes ${[long]} (until ${dayAndTime(reason.hoursEnd)}) and one whole night (until ${dayAndTime(reason.nightEnds)}).`;
      const last: Record<typeof reason.because, Text> = {
        hours: t`The hours take longer than the night here.`,
        night: t`The night takes longer than the hours here.`,
        opening,
      };
      return [both, last[reason.because]];
    }
  }
};

/** What is doubtful of a coat; cold air may be damp as well. */
const doubted = ({ why: because, times }: CoatDoubt): string => {
  if (because === 'damp') return 'air this damp it will hardly dry';
  const cold = 'this cold it may never form a film';
  return times === undefined ? cold : `${cold}, and in air this damp it will hardly dry`;
};

export const coatWords = {
  about: 'Resist coats: wax, latex, tape, and when they are dry enough to glaze',
  onAbout: 'Log a resist coat that you put on; the answer says when it will be dry',
  listAbout: 'Your resist coats and when they are ready; keepers see everybody’s',
  offAbout: 'Say that a coat has come off: glazed over, peeled or washed off',
  kindOf: 'Which resist',
  pieces: 'Which pieces, such as 3 bowls',
  whenOn: 'When you put it on, if not now',
  plannedFor: 'When you plan to glaze, if you know',
  temperature: 'How warm the room is, if you know',
  humidity: 'Humidity of the room in percent, if you know',
  whichAbout: 'The coat, such as c-12',
  how: 'How it came off, if not the usual way (latex and tape peeled, wax glazed over)',
  kinds,
  end: ends,
  doubted,
  draft: (resist: Resist, pieces: string, at: Instant | undefined): Text =>
    at === undefined
      ? t`${said(pieces)}: ${[kinds[resist]]} went on. Log it?`
      : t`${said(pieces)}: ${[kinds[resist]]} went on ${dayAndTime(at)}. Log it?`,
  event,
  why,
  ready: (at: Instant): Text => t`Ready ${dayAndTime(at)}.`,
  /** What may never be dry says so first. */
  doubtful: (doubt: CoatDoubt, at: Instant, title: Text | undefined): Text => [
    `In ${doubted(doubt)}`,
    ...t`. Don’t glaze before ${dayAndTime(at)}, and then only if it is clear and no longer tacky.`,
    ...(title ? [' ', ...title] : []),
  ],
  touch: (resist: Resist): Text =>
    resist === 'hot-wax'
      ? t`Touch it before you glaze: it should be cold and hard, not tacky.`
      : t`Touch it before you glaze: it should be clear and not tacky. If it is milky or tacky, it is not dry, whatever the clock says.`,
  readySince: (at: Instant): Text => t`Ready since ${dayAndTime(at)}.`,
  readyAtOnce: t`Ready at once.`,
  fits: (plan: Instant, at: Instant): Text =>
    t`Ready ${dayAndTime(at)}: your plan for ${dayAndTime(plan)} fits.`,
  tooEarly: (plan: Instant, at: Instant): Text =>
    t`${dayAndTime(plan)} is too early. It is ready ${dayAndTime(at)}.`,
  factCoat: 'Coat',
  fact: (id: string, resist: Resist, pieces: string, layer: number): Text =>
    layer === 1
      ? t`${[kinds[resist]]} on ${said(pieces)} (${[id]})`
      : t`${[kinds[resist]]} on ${said(pieces)}, layer ${layer} (${[id]})`,
  factOn: 'Went on',
  on: dayAndTime,
  hardly: (times: number, counted: number): Text =>
    t`${[Number.isFinite(times) ? `Air this damp dries a coat ${times.toFixed(0)} times more slowly than air at 20 °C and 50 % humidity` : 'Air this damp does not dry a coat at all']}. Only ${[counted.toFixed(0)]} times the usual hours are counted.`,
  slower: (factor: number): Text =>
    t`The room is colder or damper than usual, so the hours are multiplied by ${[factor.toFixed(1)]}.`,
  layered: (before: string, layer: number): Text =>
    t`This is layer ${layer}, over ${[before]}. Both have to dry, so the time starts again.`,
  beforeLayer: (id: string, at: Instant): Text =>
    t`These pieces already have that coat (${[id]}), put on ${dayAndTime(at)}, which is later than the time you gave. If ${[id]} was a mistake, take it back first: /undo entry:${[id]}. Nothing was saved.`,
  offBeforeOn: (id: string, at: Instant): Text =>
    t`${[id]} went on ${dayAndTime(at)}: it can’t have come off before that. Say when it came off: when:"1h ago". Nothing was saved.`,
  alsoOn: (id: string, resist: Resist, at: Instant | undefined): Text =>
    at === undefined
      ? t`These pieces also have ${[kinds[resist]]} on (${[id]}).`
      : t`These pieces also have ${[kinds[resist]]} on (${[id]}), ready ${dayAndTime(at)}. Glaze when both are ready.`,
  sessionEarly: (name: string, at: Instant): Text =>
    t`The session ${said(name)}, ${dayAndTime(at)}, comes too early for it.`,
  firing: (at: Instant): Text =>
    t`A firing is planned for ${dayAndTime(at)}. Peel the latex off before that.`,
  neverOpens: t`By its opening hours the studio never opens, so a coat can’t be ready. A keeper can set the hours: /studio hours monday:08:00-22:00.`,
  longAgo: (at: Instant): Text =>
    t`${dayAndTime(at)} is more than two weeks ago. The coat is dry by now, or needs a new one. Nothing was saved.`,
  tooMany: (typed: string, most: number): Text =>
    t`“${said(typed)}” is too many at once: ${most} pieces is the most. Log them in groups, each with its own time. Nothing was saved.`,
  dontEarly: t`Don’t glaze over it before that: glaze sticks to damp wax.`,
  dontEarlyLatex: t`Don’t glaze over it before that, and don’t pull at it while it is damp.`,
  caution: {
    fire: t`Melted wax can catch fire and burn you. Keep a lid at hand, never pour water on it, never leave it alone, and switch it off afterwards. Local rules come first.`,
    latex: t`Latex gives off ammonia, and some people are allergic to it: air the room and wear gloves. Never use bleach with it or near it: together they make a poisonous gas.`,
    burnOut: t`It burns off in the kiln, so vent the kiln room while it fires. Tell whoever fires.`,
    cold: t`Below 10 °C, wax emulsion and latex may never form a film, however long you wait. Bring the pieces somewhere warmer.`,
  },
  damp: t`In air this damp a coat may stay wet for days. Warm the room, dry its air, or bring the pieces somewhere drier.`,
  mask: t`Peel the latex off when the glaze on it looks dull, before the firing.`,
  spilled: t`Wax spilled on bare bisque comes off only in another bisque firing.`,
  takeBack: t`Undo this`,
  endedOne: (how: CoatEnd, id: string): Text => t`${[did[how]]} (${[id]})`,
  off: (id: string, how: CoatEnd, by: string): Text => t`${[id]} is ${[ends[how]]}, logged as ${[by]}.`,
  offEarly: (at: Instant): Text =>
    t`It was not expected to be dry before ${dayAndTime(at)}. If glaze sticks to it, wipe the glaze off while it is wet.`,
  putOn: t`Log a resist coat`,
  none: t`You have no resist coats on.`,
  listed: (count: number, ready: number): Text =>
    count === 1
      ? t`1 coat, ${[ready === 1 ? 'and it is ready' : 'not ready yet']}.`
      : t`${count} coats, ${[ready === 0 ? 'none' : ready === count ? 'all' : String(ready)]} ready.`,
  row: (id: string, pieces: string, by: Part | undefined): Text =>
    by === undefined ? t`${said(pieces)} (${[id]})` : t`${said(pieces)} (${[id]}) · ${by}`,
  rowText: (
    resist: Resist,
    at: Instant | undefined,
    ready: boolean,
    { peel, doubt }: { peel: boolean; doubt: CoatDoubt | undefined },
  ): Text => {
    const name = kinds[resist];
    if (at === undefined) return t`${[name]}: never ready, because the studio never opens`;
    const perhaps = doubt && `in ${doubted(doubt)}`;
    if (perhaps !== undefined)
      return ready
        ? t`${[name]}: its drying time is over, but ${[perhaps]}. Touch it before you glaze`
        : t`${[name]}: ${[perhaps]}; not before ${dayAndTime(at)}`;
    if (ready) return [peel ? `${name}: ready; peel it before the firing` : `${name}: ready`];
    return t`${[name]}: ready ${dayAndTime(at)}`;
  },
  which: (typed: string): Text => t`Which coat on “${said(typed)}”?`,
  noCoat: (typed: string): Text => t`There is no coat “${said(typed)}”. /coat list shows the coats.`,
  isOff: (typed: string): Text =>
    t`“${said(typed)}” has come off already, or was taken back. /coat list shows the coats that are on.`,
  notYours: (id: string): Text =>
    t`${[id]} is somebody else's coat. Only they or a keeper can say that it has come off.`,
};
