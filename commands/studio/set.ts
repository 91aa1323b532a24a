import { definedOnly } from '../../src/definedOnly.ts';
import { logs, optional, refusal } from '../../src/contract/contract.ts';
import { chance, mass } from '../../src/contract/kinds/quantities.ts';
import { pick } from '../../src/contract/kinds/picks.ts';
import { zone } from '../../src/contract/kinds/studioThings.ts';
import { text, name } from '../../src/contract/kinds/texts.ts';
import { stampNow } from '../../src/contract/entryStamp.ts';
import { studioCard } from '../../src/replies/studio/studioCard.ts';
import { choiceWords } from '../../src/words/desk/choiceWords.ts';
import type { StudioEvent } from '../../src/studio/settings/studio.ts';

/** The id of a Discord role or channel, from a mention or a pasted number. A mention of anything else is refused. */
const external = (typed: string, mark: '@&' | '#') => {
  const [, mentioned, bare] =
    (mark === '#' ? /^(?:<#(\d{15,20})>|(\d{15,20}))$/ : /^(?:<@&(\d{15,20})>|(\d{15,20}))$/).exec(
      typed.trim(),
    ) ?? [];
  return mentioned ?? bare;
};

export const setStudio = logs({
  name: 'set',
  about: (w) => w.studio.set,
  who: 'keeper',
  form: ['zone', 'name', 'units', 'water'],
  options: {
    zone: optional(zone, (w) => w.studio.zone),
    name: optional(name(60, 'Crab Apple Yard'), (w) => w.studio.ownName),
    units: optional(
      pick(
        ['metric', 'us', 'imperial'],
        { si: 'metric', usa: 'us', american: 'us', uk: 'imperial', british: 'imperial' },
        choiceWords.units,
      ),
      (w) => w.studio.units,
    ),
    water: optional(pick(['soft', 'hard']), (w) => w.studio.water),
    sure: optional(chance, (w) => w.studio.sure),
    deflocculant: optional(name(60, 'sodium silicate, half water'), (w) => w.studio.deflocculant),
    scoop: optional(mass(50, 5000, '250g'), (w) => w.studio.scoop),
    role: optional(text(60, '@Keepers'), (w) => w.studio.role),
    channel: optional(text(60, '#glaze-room'), (w) => w.studio.channel),
  },
  async run(v, context) {
    const { words, book } = context;
    const role = v.role === undefined ? undefined : external(v.role, '@&');
    const channel = v.channel === undefined ? undefined : external(v.channel, '#');
    if (v.role !== undefined && role === undefined) return refusal(words.studio.notMention(v.role));
    if (v.channel !== undefined && channel === undefined) return refusal(words.studio.notMention(v.channel));
    const events: StudioEvent[] = [
      ...(v.name !== undefined ? [{ kind: 'name' as const, name: v.name }] : []),
      ...(v.zone !== undefined ? [{ kind: 'zone' as const, zone: v.zone }] : []),
      ...(v.units ? [{ kind: 'units' as const, units: v.units }] : []),
      ...(v.water ? [{ kind: 'water' as const, hard: v.water === 'hard' }] : []),
      ...(v.sure !== undefined ? [{ kind: 'sure' as const, chance: v.sure }] : []),
      ...(v.scoop !== undefined ? [{ kind: 'scoop' as const, holds: v.scoop }] : []),
      ...(v.deflocculant !== undefined ? [{ kind: 'deflocculant' as const, what: v.deflocculant }] : []),
      ...(role !== undefined ? [{ kind: 'keeper-role' as const, role }] : []),
      ...(channel !== undefined ? [{ kind: 'channel' as const, channel }] : []),
    ];
    if (events.length === 0) {
      const [empty] = Object.keys(context.typed);
      const title = empty === undefined ? words.studio.nothingToSet : words.studio.emptyToSet(empty);
      return refusal(title);
    }
    const logged = stampNow(context);
    const entries: string[] = [];
    for (const event of events) entries.push((await book.logStudio(event, logged)).entry.id);
    const card = await studioCard(await book.studio(), context);
    const { factRole, factChannel, factWater, factDeflocculant, factScoop } = words.studio;
    // Name, zone and units stand in the title.
    const set = [
      role && factRole,
      channel && factChannel,
      v.water && factWater,
      v.deflocculant && factDeflocculant,
      v.scoop && factScoop,
    ];
    const facts = card.facts?.filter(({ label }) =>
      set.some((one) => one !== undefined && label.includes(one)),
    );
    return { ...card, ...definedOnly({ facts }), data: { ...card.data, entry: entries.at(-1), entries } };
  },
});
