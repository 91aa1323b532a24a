import { dryingFactor } from '../../studio/resist/dryingFactor.ts';
import { coatDoubt } from '../../studio/resist/coatDoubt.ts';
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

const title = (
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

const cautions = (coat: ResistCoat, { coat: { caution, damp } }: Words): Text[] => [
  ...({ cold: [caution.cold], damp: [damp], none: [] } as const)[coatDoubt(coat)?.why ?? 'none'],
  ...(coat.resist === 'hot-wax' ? [caution.fire] : []),
  ...(coat.resist === 'latex' ? [caution.latex] : []),
  ...(coat.resist === 'wax' || coat.resist === 'hot-wax' ? [caution.burnOut] : []),
];

/** A session that comes before the coat is ready, when no plan was given. */
const session = (coat: ResistCoat, studio: Studio, ready: DryReady, { coat: w }: Words): Text[] => {
  const plan = coatPlan(coat, studio);
  if (plan?.session === undefined || ready === 'never' || plan.at >= ready.readyAt) return [];
  return [w.sessionEarly(plan.session, plan.at)];
};

const firing = ({ resist, onAt }: ResistCoat, studio: Studio, { coat: w }: Words): Text[] =>
  resist === 'latex' && studio.firing !== undefined && studio.firing > onAt ? [w.firing(studio.firing)] : [];

const dont = ({ resist }: ResistCoat, { coat: w }: Words): Text[] => {
  if (resist === 'tape') return [];
  return [resist === 'latex' ? w.dontEarlyLatex : w.dontEarly];
};

const slower = (coat: ResistCoat, { coat: w }: Words): Text[] => {
  const { temperature, humidity } = coat;
  const factor = dryingFactor({
    ...(temperature !== undefined && { temperature }),
    ...(humidity !== undefined && { humidity }),
  });
  if (!factor.ok || factor.value <= 1) return [];
  const doubt = coatDoubt(coat);
  return [doubt?.why === 'damp' ? w.hardly(doubt.times, factor.value) : w.slower(factor.value)];
};

/** What is said of a coat that has just gone on: when it is ready, why, and whether the plan fits. */
export const coatReply = (
  coat: ResistCoat,
  studio: Studio,
  { words, now }: Asking,
  { under, others }: { under?: ResistCoat; others: readonly ResistCoat[] },
): Reply => {
  const { coat: w } = words;
  const ready = coatReady(coat, studio);
  const also = others.map((one) => {
    const its = coatReady(one, studio);
    const at = its === 'never' || its.readyAt <= now ? undefined : its.readyAt;
    return w.alsoOn(one.id, one.resist, at);
  });
  const layer = coat.below.length + 1;
  return {
    kind: 'answer',
    title:
      ready === 'never'
        ? w.neverOpens
        : words.verdict.headline(coat.pieces, title(coat, ready, { now, words })),
    facts: [
      { label: [w.factCoat], text: w.fact(coat.id, coat.resist, coat.pieces, layer) },
      { label: [w.factOn], text: w.on(coat.onAt) },
      ...(studio.zoneSet ? [] : [{ label: [words.studio.factClock], text: words.studio.noZone }]),
    ],
    dont: dont(coat, words),
    cautions: cautions(coat, words),
    reasons: [
      ...(under ? [w.layered(under.id, layer)] : []),
      ...session(coat, studio, ready, words),
      ...firing(coat, studio, words),
      ...also,
      ...(ready === 'never' ? [] : w.why(ready.why)),
      ...(isEmulsion(coat) ? slower(coat, words) : []),
      ...(coat.resist === 'tape' ? [] : [w.touch(coat.resist)]),
      ...(coat.resist === 'latex' ? [w.mask] : []),
      ...(coat.resist === 'wax' || coat.resist === 'hot-wax' ? [w.spilled] : []),
    ],
    actions: [{ label: w.takeBack, line: `/undo entry:${coat.id}`, press: 'run' }],
    data: { coats: [coatData(coat, studio, now)], entry: coat.id },
  };
};
