import { vesselVolume } from '../../src/glaze/slurry/gravityByWeighing.ts';
import { celsius, grams } from '../../src/glaze/units.ts';
import { logs, needed, optional, refusal, type Logging } from '../../src/contract/contract.ts';
import { pick } from '../../src/contract/kinds/picks.ts';
import { temperature } from '../../src/contract/kinds/quantities.ts';
import { member as memberKind } from '../../src/contract/kinds/member.ts';
import { cupKind, scaleWeight } from '../../src/contract/kinds/studioThings.ts';
import { stampNow } from '../../src/contract/entryStamp.ts';
import { name } from '../../src/contract/kinds/texts.ts';
import { lastKeeperGoes } from '../../src/studio/settings/lastKeeper.ts';
import { nameLook } from '../../src/studio/nameLook.ts';
import type { Entry } from '../../src/studio/entry.ts';
import type { Studio, StudioEvent, Vessel } from '../../src/studio/settings/studio.ts';
import { studioCard } from '../../src/replies/studio/studioCard.ts';

/** Another thing whose name looks the same. The same name in another case is the thing itself, to be set anew. */
const twinOf = (name: string, all: readonly { name: string }[]) =>
  all.find(
    (other) =>
      other.name.toLowerCase() !== name.toLowerCase() &&
      nameLook(name) !== '' &&
      nameLook(other.name) === nameLook(name),
  );

const dataOf = async (studio: Studio, entry: Entry<StudioEvent>, context: Logging) => ({
  ...(await studioCard(studio, context)).data,
  entry: entry.id,
});

export const setVessel = logs({
  name: 'vessel',
  about: (w) => w.studio.vessel,
  who: 'keeper',
  form: ['name', 'tare', 'water', 'temperature'],
  options: {
    name: needed(name(40, 'steel cup'), (w) => w.studio.name),
    tare: needed({ ...scaleWeight, example: '85.4g' }, (w) => w.studio.tare),
    water: needed({ ...scaleWeight, example: '100.2g' }, (w) => w.studio.waterHeld),
    temperature: optional(temperature(0, 40), (w) => w.studio.temperature),
  },
  async run(v, context) {
    const { words, book } = context;
    const { units, vessels } = await book.studio();
    if (v.water.grams < 20 || v.water.grams > 5000)
      return refusal(words.studio.waterOutside(v.water.grams, units));
    const twin = twinOf(v.name, vessels);
    if (twin) return refusal(words.studio.looksLike(v.name, twin.name));
    const vessel: Vessel = {
      name: v.name,
      tare: v.tare.grams,
      water: v.water.grams,
      temperature: v.temperature ?? celsius(20),
      scaleStep: grams(Math.max(v.tare.step, v.water.step)),
    };
    const volume = vesselVolume(vessel);
    const { entry, state } = await book.logStudio({ kind: 'vessel', vessel }, stampNow(context));
    return {
      kind: 'answer',
      title: words.studio.vesselSet(vessel, volume.ok ? volume.value : undefined, units),
      logged: { entry: entry.id, text: words.log.setting(entry, units) },
      facts: [{ label: [words.studio.factCheck], text: words.studio.vesselCheck(vessel, units) }],
      data: { ...(await dataOf(state, entry, context)), ...(volume.ok && { vesselMl: volume.value }) },
    };
  },
});

export const setCup = logs({
  name: 'cup',
  about: (w) => w.studio.cup,
  who: 'keeper',
  options: {
    name: needed(name(40, 'hall cup'), (w) => w.studio.name),
    kind: needed(cupKind, (w) => w.studio.cupKind),
  },
  async run(v, context) {
    const { words, book } = context;
    const twin = twinOf(v.name, (await book.studio()).cups);
    if (twin) return refusal(words.studio.looksLike(v.name, twin.name));
    const { name, kind } = v;
    const { entry, state } = await book.logStudio({ kind: 'cup', cup: { name, kind } }, stampNow(context));
    return {
      kind: 'answer',
      title: words.studio.cupSet(v.name, v.kind),
      logged: { entry: entry.id, text: words.log.setting(entry, state.units) },
      data: await dataOf(state, entry, context),
    };
  },
});

export const setKeeper = logs({
  name: 'keeper',
  about: (w) => w.studio.keeper,
  who: 'keeper',
  options: {
    member: needed(memberKind, (w) => w.studio.member),
    is: optional(pick(['keeper', 'member']), (w) => w.studio.is),
  },
  async run(v, context) {
    const { words, book, member } = context;
    const keeper = v.is !== 'member';
    const before = await book.studio();
    const { entry, state } = await book.logStudio(
      { kind: 'keeper', member: v.member.id, keeper },
      stampNow(context),
    );
    if (lastKeeperGoes(before, state, member)) return refusal(words.studio.lastKeeper);
    return {
      kind: 'answer',
      title: words.studio.keeperSet(v.member.name, keeper),
      data: await dataOf(state, entry, context),
    };
  },
});
