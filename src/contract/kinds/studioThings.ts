import { flowCups, type FlowCupKind } from '../../glaze/flow/flowCup.ts';
import { grams, type Grams } from '../../glaze/units.ts';
import { readEntryId, type Seq, type StreamNo } from '../../studio/ids.ts';
import type { StudioCup, Vessel } from '../../studio/settings/studio.ts';
import { editDistance } from '../../studio/editDistance.ts';
import { citiesNamed, zoneNamed } from '../../studio/time/zoneOfCity.ts';
import type { Asking, Choice, Kind } from '../contract.ts';
import { plainText } from '../plainText.ts';
import { asciiText } from '../../parse/readNumeral.ts';
import { readMass } from '../../parse/readQuantity.ts';
import { nameKey } from '../../text/normalizedName.ts';

interface Named {
  name: string;
}

/** The exact match; otherwise all whose names start with the text. */
export const exactOrStarting = <T extends Named>(all: readonly T[], typed: string): T[] => {
  const wanted = nameKey(typed);
  const exact = all.find(({ name }) => nameKey(name) === wanted);
  if (exact) return [exact];
  return wanted === '' ? [] : all.filter(({ name }) => nameKey(name).startsWith(wanted));
};

export const byName = ({ name }: Named): Choice => ({ name, value: name });

/** The names nearest to what was typed, the studio's few things being all that there is to choose from. */
const nearNames = (typed: string, all: readonly Named[]): { near?: Choice[] } => {
  const said = nameKey(typed).slice(0, 40);
  const near = all
    .map(({ name }) => ({ name, far: editDistance(said, nameKey(name)) }))
    .sort((a, b) => a.far - b.far)
    .slice(0, 3)
    .map(byName);
  return near.length > 0 ? { near } : {};
};

const askWhich = (typed: string, some: readonly Named[], { words }: Asking) =>
  ({ ok: false, why: words.option.whichOne(typed), choices: some.map(byName) }) as const;

export const suggestions = (all: readonly Named[], typed: string): Choice[] =>
  all.filter(({ name }) => nameKey(name).includes(nameKey(typed))).map(byName);

export const vessel: Kind<Vessel> = {
  control: 'text',
  example: 'steel cup',
  async read(typed, asking) {
    const { book, words } = asking;
    const { vessels } = await book.studio();
    const found = exactOrStarting(vessels, typed);
    if (found.length > 1) return askWhich(typed, found, asking);
    if (found[0]) return { ok: true, value: found[0] };
    const have = vessels.map(({ name }) => name);
    return { ok: false, why: words.option.noSuch('vessel', typed, have), ...nearNames(typed, vessels) };
  },
  suggest: async (typed, { book }) => suggestions((await book.studio()).vessels, typed),
};

const standardCup = (typed: string): FlowCupKind | undefined =>
  flowCups.find(({ kind, name }) => nameKey(kind) === nameKey(typed) || nameKey(name) === nameKey(typed))
    ?.kind;

const cupKinds: string[] = [...flowCups.map(({ kind }) => kind), 'own'];

export const cupKind: Kind<FlowCupKind | 'own'> = {
  control: {
    pick: [...flowCups.map(({ name, kind }) => ({ name, value: kind })), { name: 'own', value: 'own' }],
  },
  example: 'ford4',
  read(typed, { words }) {
    if (nameKey(typed) === 'own') return { ok: true, value: 'own' };
    const kind = standardCup(typed);
    return kind ? { ok: true, value: kind } : { ok: false, why: words.option.notOneOf(typed, cupKinds) };
  },
  suggest: async (typed) =>
    cupKinds.filter((kind) => kind.startsWith(nameKey(typed))).map((kind) => ({ name: kind, value: kind })),
};

/** One of the studio's own flow cups, or a standard kind. */
export const cup: Kind<StudioCup> = {
  control: 'text',
  example: 'ford4',
  async read(typed, asking) {
    const { book, words } = asking;
    const { cups } = await book.studio();
    const found = cups.find(({ name }) => nameKey(name) === nameKey(typed));
    if (found) return { ok: true, value: found };
    const kind = standardCup(typed);
    if (kind) return { ok: true, value: { name: kind, kind } };
    const begun = exactOrStarting(cups, typed);
    if (begun.length > 1) return askWhich(typed, begun, asking);
    if (begun[0]) return { ok: true, value: begun[0] };
    const have = [...cups.map(({ name }) => name), ...flowCups.map((one) => one.kind)];
    return { ok: false, why: words.option.noSuch('cup', typed, have), ...nearNames(typed, cups) };
  },
  async suggest(typed, { book }) {
    const { cups } = await book.studio();
    const kinds = flowCups.map(({ kind }) => ({ name: kind }));
    return suggestions([...cups, ...kinds], typed);
  },
};

/** An entry's id as `/bucket log` shows it, such as `7-41`. */
export const entry: Kind<{ stream: StreamNo; seq: Seq }> = {
  control: 'text',
  example: '7-41',
  read(typed, { words }) {
    const found = readEntryId(typed);
    return found ? { ok: true, value: found } : { ok: false, why: words.option.notAnEntry(typed) };
  },
  async suggest(_typed, { book, member, now, words }) {
    const { units, zone } = await book.studio();
    const buckets = await book.buckets();
    const recent = await Promise.all(buckets.map(({ no }) => book.entries(no, { most: 5 })));
    return recent
      .flat()
      .filter((one) => one.by === member && one.undoneBy === undefined && one.event.kind !== 'undo')
      .sort((a, b) => b.loggedAt - a.loggedAt)
      .slice(0, 25)
      .map((one) => {
        const name = buckets.find(({ no }) => no === one.stream)?.settings.name ?? '';
        return { name: plainText(words.log.short(one.id, name, one, units), { now, zone }), value: one.id };
      });
  },
};

const cityChoices = (typed: string): Choice[] =>
  citiesNamed(typed).map(({ name, zone }) => ({ name: `${name} (${zone})`, value: zone }));

/** A time zone by its name, or by a large city in it. */
export const zone: Kind<string> = {
  control: 'text',
  example: 'America/St_Johns',
  read(typed, { words }) {
    const named = zoneNamed(typed);
    if (named !== undefined) return { ok: true, value: named };
    const choices = cityChoices(typed);
    const [only, ...others] = new Set(choices.map(({ value }) => value));
    if (only === undefined) return { ok: false, why: words.option.notAZone(typed) };
    return others.length === 0
      ? { ok: true, value: only }
      : { ok: false, why: words.option.whichOne(typed), choices };
  },
  async suggest(typed) {
    const found = Intl.supportedValuesOf('timeZone')
      .filter((name) => nameKey(name).includes(nameKey(typed)))
      .map((name) => ({ name, value: name }));
    const others = cityChoices(typed).filter(({ value }) => !found.some((one) => one.value === value));
    return [...others, ...found];
  },
};

/** A weight read off a scale. The digits typed, or the fraction, tell the scale's resolution. */
export const scaleWeight: Kind<{ grams: Grams; step: Grams }> = {
  control: 'text',
  example: '246.2g',
  units: ['g', 'oz'],
  async read(typed, { book, words }) {
    const { units } = await book.studio();
    const read = readMass(typed, units, 'g');
    if (!read.ok) return { ok: false, why: words.option.quantity(read.why) };
    if (!(read.value > 0)) return { ok: false, why: words.option.notPositive(typed) };
    const text = asciiText(typed);
    const [, part, below] = /(?:\d*[.,](\d+)|\/ ?(\d+)|\d+)\D*$/.exec(text) ?? [];
    const unit = readMass(text.replace(/^.*\d(\D*)$/, '1$1'), units, 'g');
    const step = below === undefined ? 10 ** -(part?.length ?? 0) : 1 / Number(below);
    return { ok: true, value: { grams: read.value, step: grams(step * (unit.ok ? unit.value : 1)) } };
  },
};
