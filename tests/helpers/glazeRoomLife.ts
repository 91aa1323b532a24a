import { grams, gravity, millilitres, seconds } from '../../src/glaze/units.ts';
import type { BucketEntry, BucketEvent } from '../../src/studio/bucket/bucketEvent.ts';
import { hours, memberId } from '../../src/studio/ids.ts';
import type { BucketSettings } from '../../src/studio/settings/bucketSettings.ts';
import { entriesOf } from './bucketArbitraries.ts';
import { seeded } from './simulatedLogbook.ts';

/** What strangers do to a bucket in a day that nobody logs, and how people err. Of a simulated room: from memory. */
export interface Faults {
  waterPerDay: number;
  powderPerDay: number;
  saltPerDay: number;
  /** Litres of a stranger's water. */
  water: readonly [low: number, high: number];
  /** Parts of the readings that are slips, and of “right” pressed without a look. */
  slips: number;
  blind: number;
  /** How far the hydrometer is off. */
  hydrometer: number;
}

export const ordinaryFaults: Faults = {
  waterPerDay: 0.05,
  powderPerDay: 0.02,
  saltPerDay: 0.03,
  water: [0.3, 1.2],
  slips: 0.02,
  blind: 0.25,
  hydrometer: 0,
};

export const dippingBucket: BucketSettings = {
  name: 'Gull Grey',
  use: 'dipping',
  pail: millilitres(19_000),
  gravity: { low: gravity(1.42), high: gravity(1.46) },
  efflux: { low: seconds(12), high: seconds(16) },
  cup: 'ford4',
  solids: gravity(2.6),
  restLimit: hours(1),
  shelfLife: hours(24 * 7),
  mesh: 80,
  cautions: [],
};

const day = 24 * 60;
const solids = 2.6;

/** A bucket of which the truth is known, the strangers at it, and the entries that its people log. Nothing here is our own arithmetic. */
export const glazeRoomLife = (seed: number, faults: Faults = ordinaryFaults) => {
  const { uniform, normal } = seeded(seed);
  const events: { event: BucketEvent; minute: number }[] = [];
  const by: string[] = [];
  const pail = { water: 0, powder: 0, salt: 0 };
  let minute = 0;
  const phi = (1.44 - 1) / (solids - 1);
  pail.water = 15 * (1 - phi);
  pail.powder = 15 * phi;
  const litres = () => pail.water + pail.powder;
  const gravityNow = () => (pail.water + solids * pail.powder) / litres();
  /** ln seconds. */
  const flowNow = () => Math.log(13.9) + 10 * (gravityNow() - 1.44) + pail.salt;
  const log = (event: BucketEvent, who = 'wren') => {
    events.push({ event, minute });
    by.push(who);
  };
  const happened = { water: 0, powder: 0, salt: 0, days: 0 };
  const strangers = (gone: number) => {
    happened.days += gone;
    pail.water -= 0.016 * gone;
    pail.salt += 0.015 * Math.sqrt(gone) * normal();
    for (let left = gone; left > 0; left -= 0.25) {
      const part = Math.min(0.25, left);
      if (uniform() < faults.waterPerDay * part) {
        pail.water += faults.water[0] + (faults.water[1] - faults.water[0]) * uniform();
        happened.water++;
      }
      if (uniform() < faults.powderPerDay * part) {
        pail.powder += 0.2 + 0.2 * uniform();
        happened.powder++;
      }
      if (uniform() < faults.saltPerDay * part) {
        pail.salt += 0.2 + 0.2 * uniform();
        happened.salt++;
      }
    }
  };
  log({ kind: 'setup', settings: dippingBucket, volume: millilitres(15_000) });
  const reads = (value: number, noise: number, slip: number) =>
    uniform() < faults.slips ? value + slip * (2 * uniform() - 1) : value + noise * normal();
  return {
    uniform,
    pail,
    happened,
    gravityNow,
    litres,
    flowNow,
    log,
    wait: (days: number) => {
      minute += days * day;
      strangers(days);
    },
    stir: () => log({ kind: 'stir', minutes: 3, seen: [] }),
    weigh: (how: 'weight' | 'hydrometer' = 'weight', withTime = false) =>
      log({
        kind: 'reading',
        stirred: true,
        seen: [],
        gravity: {
          value: gravity(
            Math.min(
              2.5,
              Math.max(1, reads(gravityNow() + (how === 'hydrometer' ? faults.hydrometer : 0), 0.0045, 0.2)),
            ),
          ),
          u95: 0.009,
          by: how,
        },
        ...(withTime && {
          flow: {
            cup: 'ford4',
            kind: 'ford4' as const,
            seconds: seconds(Math.exp(reads(flowNow(), 0.033, 0.4))),
          },
        }),
      }),
    look: (who = 'wren') => {
      const seen = flowNow() + 0.12 * normal();
      const blind = uniform() < faults.blind;
      const look =
        blind || (seen >= Math.log(12) && seen <= Math.log(16))
          ? ('right' as const)
          : seen < Math.log(12)
            ? ('thin' as const)
            : ('thick' as const);
      log({ kind: 'reading', stirred: true, seen: [], look }, who);
    },
    pour: (more: number, logged: boolean) => {
      pail.water += more * (1 + 0.05 * normal());
      if (logged) log({ kind: 'addition', added: { what: 'water', volume: millilitres(1000 * more) } });
    },
    tip: (more: number) => {
      pail.powder += more;
      log({ kind: 'addition', added: { what: 'dry', mass: grams(1000 * solids * more) } });
    },
    minute: () => minute,
    entries: (): BucketEntry[] =>
      entriesOf(events).map((entry, i) => ({ ...entry, by: memberId(by[i] ?? 'wren') })),
  };
};

export const quiet: Faults = {
  ...ordinaryFaults,
  waterPerDay: 0,
  powderPerDay: 0,
  saltPerDay: 0,
  slips: 0,
  blind: 0,
};

/** Somebody comes every day, measures, and sets the bucket right again. */
export const keptLife = (seed: number, faults: Faults, visits: number, look: 'no' | 'one' = 'no') => {
  const life = glazeRoomLife(seed, faults);
  for (let visit = 0; visit < visits; visit++) {
    life.wait(0.5 + life.uniform());
    life.stir();
    if (look === 'one') life.look(`member ${visit % 5}`);
    life.weigh('weight', true);
    const off = life.gravityNow() - 1.44;
    if (off > 0.012) life.pour((life.litres() * off) / 0.42, true);
    if (off < -0.012) life.tip((life.litres() * -off) / 1.16);
  }
  return life;
};
