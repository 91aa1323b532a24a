import { pressToRun } from '../../contract/replyParts.ts';
import { definedOnly } from '../../definedOnly.ts';
import { solidsVolumeFraction } from '../../glaze/slurry/slurry.ts';
import type { Grams } from '../../glaze/units.ts';
import type { BucketEvent, CupTime } from '../../studio/bucket/bucketEvent.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { pasteFraction } from '../../studio/batch/planBatch.ts';
import { stateGravity, type GravityScale } from '../../studio/measure/stateGravity.ts';
import type { Studio, Vessel } from '../../studio/settings/studio.ts';
import { likelierWay } from '../../studio/measure/whichBucket.ts';
import type { Instant } from '../../studio/ids.ts';
import { plausibleGravity, weighGravity } from '../../studio/measure/weighGravity.ts';
import type { Text } from '../../words/text/text.ts';
import type { Words } from '../../words/words.ts';
import type { Reply } from '../../contract/contract.ts';

type Measured = NonNullable<Extract<BucketEvent, { kind: 'reading' }>['gravity']>;

/** How else a weight could be read, and what gravity that would be. */
export interface OtherWay {
  weighed: 'with-cup' | 'without-cup';
  gravity: number;
}

export type ReadGravity =
  | { kind: 'none' }
  | { kind: 'gravity'; gravity: Measured; reasons: Text[]; otherWay?: OtherWay }
  | { kind: 'reply'; reply: Reply };

interface Said {
  bucket: BucketState;
  weight?: { grams: Grams; step: Grams };
  gravity?: { value: number; scale?: GravityScale };
  vessel?: Vessel;
  weighed?: 'with-cup' | 'without-cup';
  scale?: GravityScale;
  within?: number;
  seconds?: CupTime['seconds'];
}

interface Setting {
  studio: Studio;
  thick: boolean;
  words: Words;
  at: Instant;
  /** The options as they were typed, to build further lines from. */
  typed: Record<string, string>;
}

const replyOf = (kind: 'refusal' | 'choice', title: Text, more: Partial<Reply> = {}): ReadGravity => ({
  kind: 'reply',
  reply: { kind, title, data: {}, ...more },
});

const gravityAsStated = (
  { value, ...on }: NonNullable<Said['gravity']>,
  said: Said,
  setting: Setting,
): ReadGravity => {
  const { thick, words, typed } = setting;
  const { scale = on.scale } = said;
  if (on.scale && scale !== on.scale && !(on.scale === 'baume' && scale === 'baume-144'))
    return replyOf('refusal', words.reading.twoScales(typed['gravity'] ?? '', scale ?? on.scale));
  const found = stateGravity(value, {
    ...definedOnly({ scale, within: said.within }),
    thick,
  });
  switch (found.kind) {
    case 'below-water':
      return replyOf('refusal', words.reading.belowWater(value), { data: { gravity: value } });
    case 'above-glaze':
      return replyOf('refusal', words.reading.aboveGlaze(value), { data: { gravity: value } });
    case 'sticks':
      return replyOf('refusal', words.reading.sticks);
    case 'stated':
      return {
        kind: 'gravity',
        gravity: { value: found.gravity, u95: found.u95, by: found.by },
        reasons: [words.reading.statedAs(found.gravity, found.u95, found.by)],
      };
  }
};

const chooseVessel = ({ studio, words, typed }: Setting): ReadGravity =>
  studio.vessels.length === 0
    ? replyOf('refusal', words.reading.noVessel)
    : replyOf('choice', words.reading.whichVessel, {
        actions: studio.vessels
          .slice(0, 5)
          .map(({ name }) => pressToRun([{ said: name }], 'reading', { ...typed, vessel: name })),
        data: { option: 'vessel', choices: studio.vessels.map(({ name }) => ({ label: name, value: name })) },
      });

const weighed = (weight: NonNullable<Said['weight']>, said: Said, setting: Setting): ReadGravity => {
  const { studio, words, typed } = setting;
  const [only, ...others] = studio.vessels;
  const vessel = said.vessel ?? (others.length === 0 ? only : undefined);
  if (!vessel) return chooseVessel(setting);
  const cup = said.weighed === undefined ? undefined : said.weighed === 'with-cup' ? 'on' : 'off';
  const found = weighGravity(weight, vessel, cup);
  const asTyped = typed['weight'] ?? '';
  switch (found.kind) {
    case 'either': {
      const ways = [
        { way: 'with-cup', gravity: found.on.gravity },
        { way: 'without-cup', gravity: found.off.gravity },
      ] as const;
      const likelier = likelierWay(said.bucket, [found.on, found.off], setting.at);
      if (likelier) {
        const [on, off] = ways;
        const [{ way }, other] = likelier === found.on ? [on, off] : [off, on];
        const taken = weighed(weight, { ...said, weighed: way }, setting);
        if (taken.kind !== 'gravity') return taken;
        const told = words.reading.cupTold(way, other.gravity);
        const otherWay = { weighed: other.way, gravity: other.gravity };
        return { ...taken, otherWay, reasons: [...taken.reasons, told] };
      }
      return replyOf('choice', words.reading.withCup(asTyped, vessel.name), {
        actions: ways.map(({ way, gravity }) =>
          pressToRun(words.reading.weighedWay(way, gravity), 'reading', { ...typed, weighed: way }),
        ),
        data: {
          option: 'weighed',
          choices: ways.map(({ way, gravity }) => ({ label: way, value: way, gravity })),
        },
      });
    }
    case 'wrong-unit':
      return replyOf('refusal', words.reading.wrongUnit(asTyped, vessel, studio.units, found.meant));
    case 'too-heavy':
      return replyOf('refusal', words.reading.tooHeavy(asTyped, vessel, studio.units));
    case 'too-light':
      return replyOf('refusal', words.reading.tooLight(asTyped, vessel, studio.units));
    case 'weighed': {
      const { gravity, u95 } = found.weighed;
      return {
        kind: 'gravity',
        gravity: { value: gravity, u95: said.within ?? u95, by: 'weight', vessel: vessel.name },
        reasons: [words.reading.weighedAs(gravity, said.within ?? u95, vessel, found.cup, studio.units)],
      };
    }
  }
};

/** A value that is no glaze is a typing error: it is pure water, or too thick to pour. */
const refuseNoSlurry = (
  found: ReadGravity,
  { bucket }: Said,
  { words: { reading } }: Setting,
): ReadGravity => {
  if (found.kind !== 'gravity') return found;
  const { solids: particleGravity } = bucket.settings;
  const { value } = found.gravity;
  if (value >= particleGravity) return replyOf('refusal', reading.abovePowder(value, particleGravity));
  if (value <= plausibleGravity.low) return replyOf('refusal', reading.water(value));
  const grains = solidsVolumeFraction({ slurry: value, particleGravity });
  return grains.ok && grains.value > pasteFraction
    ? replyOf('refusal', reading.paste(value, grains.value))
    : found;
};

/** The gravity of a reading, from a cup's weight or as stated; or a reply that asks or refuses. */
export const readGravity = (said: Said, setting: Setting): ReadGravity => {
  const { reading } = setting.words;
  if (said.weight && said.gravity !== undefined) return replyOf('refusal', reading.both);
  if (said.weight) return refuseNoSlurry(weighed(said.weight, said, setting), said, setting);
  if (said.gravity === undefined) return { kind: 'none' };
  return refuseNoSlurry(gravityAsStated(said.gravity, said, setting), said, setting);
};
