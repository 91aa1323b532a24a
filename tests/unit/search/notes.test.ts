import { describe, expect, it } from 'vitest';
import { isGroup } from '../../../src/contract/contract.ts';
import { noteActions } from '../../../src/replies/ask/noteActions.ts';
import { parseLine } from '../../../src/contract/parseLine.ts';
import { epsomInSolution } from '../../../src/glaze/materials/epsomSolution.ts';
import { gravityFromBaume, gravityFromTwaddell } from '../../../src/glaze/slurry/hydrometer.ts';
import { waterToAdd, waterToDrawOff } from '../../../src/glaze/slurry/massBalance.ts';
import { celsius, gravity, millilitres } from '../../../src/glaze/units.ts';
import { waterViscosity } from '../../../src/glaze/water/waterViscosity.ts';
import { commands } from '../../../src/start/registry.ts';
import { loadNotes } from '../../../src/seed/loadNotes.ts';
import { openHandbook } from '../../../src/search/openHandbook.ts';
import { noteCautions, noteCommands } from '../../../src/studio/handbook.ts';
import { en } from '../../../src/words/en.ts';
import { openRoomWithGullGrey } from '../../helpers/room/glazeRoom.ts';
import { handbook } from '../../helpers/handbook.ts';
import { noonPlus } from '../../helpers/store/storeEvents.ts';

const notes = loadNotes();
const textOf = (id: string) => JSON.stringify(notes.find((note) => note.id === id));
const value = <T>(checked: { ok: true; value: T } | { ok: false }): T => {
  if (!checked.ok) throw new Error('out of range');
  return checked.value;
};

describe('the handbook', () => {
  it('has notes each of its own name and title, which point at notes that are there', () => {
    const ids = notes.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(new Set(notes.map(({ title }) => title)).size).toBe(ids.length);
    expect(notes.flatMap(({ see }) => see).filter((id) => !ids.includes(id))).toEqual([]);
    expect(notes.filter(({ id, see }) => see.includes(id))).toEqual([]);
  });

  it.each(notes)('answers its own title first: $title', ({ id, title }) => {
    const [first] = handbook.find(title, []).answers;
    expect(first?.found).toMatchObject({ note: { id } });
  });

  it('is not thrown by a word that every object has a thing of', () => {
    const [first] = handbook.find('why is my constructor glaze pinholing', []).answers;
    expect(first?.found).toMatchObject({ note: { id: 'pinholing' } });
  });

  it.each(notes)('says in one or two sentences that end what $id is', ({ answer, basis }) => {
    expect(answer).toMatch(/^\p{Lu}[^\n]+[^.]\.$/u);
    expect(basis).not.toBe('');
  });

  it.each(notes.filter(({ cautions }) => cautions.length > 0))(
    'warns in the words of the bot: $id',
    (note) => {
      for (const caution of note.cautions)
        expect(en.ask.caution(caution).join('').length).toBeGreaterThan(20);
    },
  );

  it('uses every caution, and offers every command, that it may', () => {
    expect(noteCautions.filter((one) => !notes.some(({ cautions }) => cautions.includes(one)))).toEqual([]);
    expect(noteCommands.filter((one) => !notes.some(({ commands: had }) => had.includes(one)))).toEqual([]);
  });

  it('offers commands that are there, whole when they are to be run', async () => {
    const room = await openRoomWithGullGrey();
    const member = await room.member('Tove');
    await room.store.books.read(room.studio, async (book) => {
      const [bucket] = await book.buckets();
      if (!bucket) throw new Error('the room has no bucket');
      const asking = {
        studio: room.studio,
        member,
        role: 'keeper' as const,
        now: noonPlus(1),
        happenedAt: noonPlus(1),
        words: en,
        handbook,
        book,
        typed: {},
      };
      for (const known of [bucket, undefined])
        for (const { line, press } of noteActions(noteCommands, known, asking)) {
          const parsed = parseLine(line, commands);
          if (!parsed.ok) throw new Error(line);
          const { path, typed } = parsed.value;
          const found = commands.find(({ name }) => name === path[0]);
          const leaf = found && isGroup(found) ? found.leaves.find(({ name }) => name === path[1]) : found;
          if (!leaf || isGroup(leaf)) throw new Error(line);
          const missing = Object.entries(leaf.options).filter(
            ([name, { needed }]) => needed && typed[name] === undefined,
          );
          // What is run by one press only asks, and lacks nothing.
          if (press === 'run') expect([line, leaf.effect, missing.length]).toEqual([line, 'asks', 0]);
        }
    });
  });
});

it('the handbook is read when the first question comes, and once', () => {
  let reads = 0;
  const lazy = openHandbook(() => {
    reads++;
    return notes;
  });
  expect(reads).toBe(0);
  for (const question of ['pinholes', 'crazing']) expect(lazy.find(question, []).answers).not.toEqual([]);
  expect(reads).toBe(1);
});

describe('numbers in the handbook', () => {
  it('are those of the formulas', () => {
    const water = value(waterToAdd({ volume: millilitres(10_000), from: gravity(1.5), to: gravity(1.45) }));
    // By hand: 10 l × 0.05 ÷ 0.45 = 1.11 l.
    expect(water / 1000).toBeCloseTo(1.11, 2);
    expect(textOf('how-much-water')).toContain('10 l at 1.50, wanted 1.45: about 1.1 l');

    const drawn = value(
      waterToDrawOff({ volume: millilitres(10_000), from: gravity(1.4), to: gravity(1.45) }),
    );
    // By hand: what is drawn off is water, so 10 l × 0.05 ÷ 0.45 = 1.11 l.
    expect(drawn / 1000).toBeCloseTo(1.11, 2);
    expect(textOf('drawn-off-water')).toContain('10 l at 1.40, wanted 1.45: about 1.1 l');
    expect(textOf('drawn-off-water')).toContain('÷ (gravity wanted − 1)');

    const spoon = value(epsomInSolution({ volume: millilitres(4.93), temperature: celsius(20) }));
    expect(spoon).toBeCloseTo(3.28, 1);
    expect(textOf('flocculant-solution')).toContain('about 3.3 g');

    // IAPWS 2008: 1.5182 mPa·s at 5 °C, 1.0016 at 20 °C.
    const [cold, room] = [waterViscosity(celsius(5)), waterViscosity(celsius(20))].map(value);
    expect(Number(cold) / Number(room)).toBeCloseTo(1.5, 1);
    expect(textOf('temperature')).toContain('half as thick again at 5 °C as at 20 °C');

    expect(value(gravityFromTwaddell(90))).toBeCloseTo(1 + 90 / 200, 9);
    expect(value(gravityFromBaume(45))).toBeCloseTo(145 / (145 - 45), 9);
    expect(textOf('hydrometer')).toContain('1 + °Tw ÷ 200');
    expect(textOf('hydrometer')).toContain('145 ÷ (145 − °Bé)');

    // By hand: 2 % of the volume holds nothing; 19 l at 1.45.
    expect(1.44 * 0.98).toBeCloseTo(1.41, 2);
    expect(textOf('foam')).toContain('2 % of air turns 1.44 into 1.41');
    expect(19 * 1.45).toBeCloseTo(27.55, 2);
    expect(textOf('lifting')).toContain('27.6 kg');
  });

  it('are those of the standards that they name', () => {
    // OSHA 29 CFR 1910.1053: permissible limit 50 µg/m³, action level 25 µg/m³, as 8-hour means.
    expect(textOf('dust')).toMatch(/50 µg .* 8 hours, action from 25.*OSHA 29 CFR 1910\.1053/);
    expect(textOf('food-contact')).toMatch(/ASTM C738.*ISO 6486/);
  });

  it('and what they name is what those say', () => {
    // ASTM C373: boiled for 5 h, then soaked for 24 h more.
    expect(textOf('absorption')).toMatch(/five hours and lets it soak 24 hours.*two hours .*common practice/);
    // National Capital Poison Center (US): 15 to 20 minutes; lenses out.
    expect(textOf('eye')).toMatch(/at least 15 minutes.*lenses out/);
    // NHS, burns and scalds: cool or lukewarm running water for 20 minutes.
    expect(textOf('burns')).toMatch(/20 minutes/);
    // Poison centres of Oregon and Oklahoma: no vomiting, nothing to eat or drink unless they say so.
    expect(textOf('swallowed')).toMatch(/make nobody vomit.*give nothing to eat or drink unless they say so/);
    // Caley and Elving 1939: heating a saturated solution of lithium carbonate brings crystals out.
    expect(textOf('crystals')).toMatch(/Lithium carbonate.*Warming brings more out/);
    // NIOSH 1980, Occupational Exposure to Talc Containing Asbestos.
    for (const id of ['toxic-materials', 'unlabelled', 'new-batch']) expect(textOf(id)).toMatch(/asbestos/);
  });
});

it.each([
  ['why do pots explode in the kiln', 'exploded', /from steam/],
  ['s crack in the bottom of my bowl', 'drying-cracks', /comes from drying/],
  ['how long to wait after sponging bisque', 'damp-sponge', /a few minutes/],
  ['gerstley borate glaze gels by itself', 'gel', /lower gravity window is often the remedy/],
  ['can i use calcium chloride instead of epsom', 'flocculant', /Calcium chloride solution and vinegar/],
  ['vinegar to flocculate', 'flocculant', /never where bleach/],
  ['is there asbestos in old talc', 'toxic-materials', /without a maker/],
  ['found a jar without a label', 'unlabelled', /write UNKNOWN/],
])('a technician’s question is answered as a technician would: %s', (question, id, said) => {
  expect(handbook.find(question, []).answers[0]?.found).toMatchObject({ note: { id } });
  expect(textOf(id)).toMatch(said);
});
