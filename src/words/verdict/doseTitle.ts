import type { UnitSystem } from '../../studio/settings/studio.ts';
import type { Amounts, Reason } from '../../studio/verdict/verdict.ts';
import { doseText, dropsText, handDose } from '../text/doseText.ts';
import { percentText } from '../text/measures.ts';
import { pour } from '../text/pour.ts';
import { t, type Text } from '../text/text.ts';

const stops = ['dose-no-change', 'dose-checkpoint', 'loosening-no-change', 'loosening-checkpoint'] as const;
type Stop = Extract<Reason, { because: (typeof stops)[number] }>;

export const isStop = (reason: Reason): reason is Stop => stops.some((one) => one === reason.because);

/** No more of it for now, as it is said to the keeper who decides, and to a member. */
export const stopped = (stop: Stop, toKeeper: boolean): Text => {
  if (stop.because === 'loosening-no-change')
    return toKeeper
      ? t`Stop: two doses of deflocculant changed nothing. It may gel by itself. Don't add water.`
      : t`It is still thick, and two doses of deflocculant changed nothing. Add nothing. Ask a keeper.`;
  if (stop.because === 'loosening-checkpoint')
    return toKeeper
      ? t`Stop: much deflocculant is in it. Look at it yourself before more goes in, or make a fresh batch.`
      : t`It is still thick, and much deflocculant is in it. Add nothing. Ask a keeper.`;
  if (stop.because === 'dose-no-change')
    return toKeeper
      ? t`Stop: two doses changed nothing, so flocculant is not what it needs. Is there clay in it?`
      : t`It is still thin, and two doses changed nothing. No more flocculant. Ask a keeper.`;
  const percent = percentText(stop.totalPercent);
  return toKeeper
    ? t`Stop: flocculant of ${[percent]} of its dry weight is in. Look at it yourself before more goes in, or make a fresh batch.`
    : t`It is still thin, and flocculant of ${[percent]} of its dry weight is in. No more for now. Ask a keeper.`;
};

/** Small amounts by drops, without the spoons: a title is short. */
const shortDose = (ml: number): string => (ml <= 1 ? doseText(ml) : `${handDose(ml)} ml`);

/** Deflocculant is tried in a jar before any goes into the pail: what is in can't be taken out. */
export const jarTest = (amounts: Amounts, units: UnitSystem): Text => {
  const { jarDrops = 1, deflocculantMl, deflocculantMlPerLitre } = amounts;
  const pouring = pour(deflocculantMl, deflocculantMlPerLitre, units, shortDose);
  const jar = units === 'us' ? '1-cup' : '250 ml';
  const first = t`Thick, but not for lack of water: try ${[dropsText(jarDrops)]} of deflocculant in a ${[jar]} jar of it.`;
  if (!pouring) return first;
  return pouring.each === ''
    ? t`${first} If that runs right, stir ${[pouring.amount]} into the pail.`
    : t`${first} If that runs right, stir in ${[pouring.amount]}${[pouring.each]}.`;
};
