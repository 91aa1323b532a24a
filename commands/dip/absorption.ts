import { absorptionByWeighing, absorptionOf, studioBisque } from '../../src/glaze/body/absorption.ts';
import { asks, needed, optional, refusal, type Reply } from '../../src/contract/contract.ts';
import { mass } from '../../src/contract/kinds/quantities.ts';

export const bisqueAbsorption = asks({
  name: 'absorption',
  about: (w) => w.dip.absorptionAbout,
  who: 'member',
  options: {
    dry: needed(mass(0.01, 100_000, '84.36g'), (w) => w.dip.dry),
    saturated: needed(mass(0.01, 200_000, '95.10g'), (w) => w.dip.saturated),
    suspended: optional(mass(0, 100_000, '50.12g'), (w) => w.dip.suspended),
  },
  async run(v, { words }): Promise<Reply> {
    const w = words.dip;
    const { dry, saturated, suspended } = v;
    const refuse = (quantity: string): Reply => refusal(w.absorptionRefused(quantity), { quantity });
    const whole = suspended === undefined ? undefined : absorptionByWeighing({ dry, saturated, suspended });
    if (whole && !whole.ok) return refuse(whole.outOfRange.quantity);
    const plain = absorptionOf({ dry, saturated });
    if (!plain.ok) return refuse(plain.outOfRange.quantity);
    const part = plain.value;
    return {
      kind: 'answer',
      title: w.absorptionTitle(100 * part),
      facts: whole
        ? [
            { label: [w.factPorosity], text: w.percent(whole.value.apparentPorosity) },
            { label: [w.factBulk], text: w.density(whole.value.bulkDensity) },
          ]
        : [],
      reasons: [
        w.usualBisque(
          studioBisque.low,
          studioBisque.high,
          part >= studioBisque.low && part <= studioBisque.high,
        ),
        w.soaking,
      ],
      data: {
        absorptionPercent: 100 * part,
        ...(whole && {
          apparentPorosityPercent: 100 * whole.value.apparentPorosity,
          bulkDensity: whole.value.bulkDensity / 1000,
          apparentGravity: whole.value.apparentGravity,
        }),
      },
    };
  },
});
