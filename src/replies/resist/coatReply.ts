import { present } from '../../present.ts';
import { fact, pressToRun } from '../../contract/replyParts.ts';
import { definedOnly } from '../../definedOnly.ts';
import { dryingFactor } from '../../studio/resist/dryingFactor.ts';
import { coatDoubt, type CoatDoubt } from '../../studio/resist/coatDoubt.ts';
import { coatReminders } from '../../studio/remind/coatReminders.ts';
import type { ToldWhere } from '../../studio/remind/toldWhere.ts';
import type { ResistCoat } from '../../studio/resist/resistCoat.ts';
import { coatPlan } from '../../studio/resist/coatPlan.ts';
import { coatReady } from '../../studio/resist/coatReady.ts';
import type { DryReady } from '../../studio/resist/overnight.ts';
import type { Studio } from '../../studio/settings/studio.ts';
import type { Text } from '../../words/text/text.ts';
import type { Words } from '../../words/words.ts';
import { coatData } from './coatData.ts';
import type { Asking, Reply } from '../../contract/contract.ts';

const isEmulsion = ({ resist }: ResistCoat) => resist === 'wax' || resist === 'latex';

const coatTitle = (
  coat: ResistCoat,
  ready: Exclude<DryReady, 'never'>,
  { now, words: { coat: w } }: Pick<Asking, 'now' | 'words'>,
): Text => {
  const { readyAt } = ready;
  const { plannedFor } = coat;
  const doubt = coatDoubt(coat);
  if (doubt)
    return w.doubtful(
      doubt,
      readyAt,
      plannedFor !== undefined && plannedFor < readyAt ? w.tooEarly(plannedFor, readyAt) : undefined,
    );
  if (plannedFor !== undefined && plannedFor < readyAt) return w.tooEarly(plannedFor, readyAt);
  if (plannedFor !== undefined) return w.fits(plannedFor, readyAt);
  if (ready.why.because === 'at-once') return w.readyAtOnce;
  return readyAt <= now ? w.readySince(readyAt) : w.ready(readyAt);
};

const doubts = (doubt: CoatDoubt | undefined, { coat: { caution, damp } }: Words): Text[] =>
  present([doubt?.why === 'cold' && caution.cold, doubt?.times !== undefined && damp]);

const coatCautions = (coat: ResistCoat, words: Words): Text[] =>
  present([
    ...doubts(coatDoubt(coat), words),
    coat.resist === 'hot-wax' && words.coat.caution.fire,
    coat.resist === 'latex' && words.coat.caution.latex,
    (coat.resist === 'wax' || coat.resist === 'hot-wax') && words.coat.caution.burnOut,
  ]);

/** The next session, if it starts before the coat is ready and no plan was given. */
const sessionBeforeReady = (
  coat: ResistCoat,
  studio: Studio,
  ready: DryReady,
  { coat: w }: Words,
): Text[] => {
  const plan = coatPlan(coat, studio);
  if (plan?.session === undefined || ready === 'never' || plan.at >= ready.readyAt) return [];
  return [w.sessionEarly(plan.session, plan.at)];
};

const firing = ({ resist, onAt }: ResistCoat, studio: Studio, { coat: w }: Words): Text[] =>
  resist === 'latex' && studio.firing !== undefined && studio.firing > onAt ? [w.firing(studio.firing)] : [];

const coatDonts = ({ resist }: ResistCoat, { coat: w }: Words): Text[] => {
  if (resist === 'tape') return [];
  return [resist === 'latex' ? w.dontEarlyLatex : w.dontEarly];
};

const slowerReason = (coat: ResistCoat, { coat: w }: Words): Text[] => {
  const { temperature, humidity } = coat;
  const factor = dryingFactor(definedOnly({ temperature, humidity }));
  if (!factor.ok || factor.value <= 1) return [];
  const doubt = coatDoubt(coat);
  return [doubt?.times !== undefined ? w.hardly(doubt.times, factor.value) : w.slower(factor.value)];
};

/** The reply for a new coat: when it is ready, why, and whether that fits the plan. */
export const coatReply = (
  coat: ResistCoat,
  studio: Studio,
  { words, now }: Asking,
  { under, others, told }: { under?: ResistCoat; others: readonly ResistCoat[]; told: ToldWhere },
): Reply => {
  const { coat: w } = words;
  const ready = coatReady(coat, studio);
  const also = others.map((one) => {
    const its = coatReady(one, studio);
    const at = its === 'never' || its.readyAt <= now ? undefined : its.readyAt;
    return w.alsoOn(one.id, one.resist, at);
  });
  const layer = coat.below.length + 1;
  const tellAt = coatReminders(coat, studio).find(({ about }) => about.kind === 'ready')?.dueAt;
  return {
    kind: 'answer',
    title:
      ready === 'never'
        ? w.neverOpens
        : words.verdict.headline(coat.pieces, coatTitle(coat, ready, { now, words })),
    facts: present([
      fact(w.factCoat, w.fact(coat.id, coat.resist, coat.pieces, layer)),
      fact(w.factOn, w.on(coat.onAt)),
      tellAt !== undefined && fact(words.reminder.factTold, words.reminder.toldAt(told, tellAt, now)),
      !studio.zoneSet && fact(words.studio.factClock, words.studio.noZone),
    ]),
    dont: coatDonts(coat, words),
    cautions: coatCautions(coat, words),
    reasons: present([
      under && w.layered(under.id, layer),
      ...sessionBeforeReady(coat, studio, ready, words),
      ...firing(coat, studio, words),
      ...also,
      ...(ready === 'never' ? [] : w.why(ready.why)),
      ...(isEmulsion(coat) ? slowerReason(coat, words) : []),
      coat.resist !== 'tape' && w.touch(coat.resist),
      coat.resist === 'latex' && w.mask,
      (coat.resist === 'wax' || coat.resist === 'hot-wax') && w.spilled,
    ]),
    actions: [pressToRun(w.takeBack, 'undo', { entry: coat.id })],
    data: { coats: [coatData(coat, studio, now)], entry: coat.id },
  };
};
