import { normalizedName } from '../../text/normalizedName.ts';
import { isIdLike } from '../../studio/isIdLike.ts';
import { nameLook } from '../../studio/nameLook.ts';
import type { Member } from '../../studio/logbook/ports.ts';
import type { Asking, Choice, Kind } from '../contract.ts';
import { plainText } from '../plainText.ts';

/** The id in a mention, or typed as a number: unlike a name, nobody can imitate it. */
const numberOf = (typed: string): string | undefined => {
  const [, mentioned, bare] = /^(?:<@!?(\d{1,20})>|(\d{15,20}))$/.exec(typed.trim()) ?? [];
  return mentioned ?? bare;
};

/** Whether typing the name finds it again, rather than being parsed as something else. */
const findsItself = (name: string): boolean =>
  normalizedName(name) !== '' && numberOf(name) === undefined && !isIdLike(name);

const looksLike = (name: string) => {
  const look = nameLook(name);
  return (other: Member): boolean => look !== '' && nameLook(other.name) === look;
};

/** Members to choose from. Names that look alike also show since when the bot has known each. */
const choicesOf = async (
  some: readonly Member[],
  all: readonly Member[],
  { book, words, now }: Asking,
): Promise<Choice[]> => {
  const { zone } = await book.studio();
  return Promise.all(
    some.slice(0, 25).map(async ({ id, name }): Promise<Choice> => {
      const alone = all.filter(looksLike(name)).length <= 1;
      const met = alone ? undefined : await book.metAt(id);
      const label = met === undefined ? name : plainText(words.option.memberSince(name, met), { now, zone });
      return { name: label, value: alone && findsItself(name) ? name : id };
    }),
  );
};

/** A member of this studio, by mention or by full name. A name that looks like another's is not accepted. */
export const member: Kind<Member> = {
  control: 'text',
  example: 'Wren',
  async read(typed, asking) {
    const { book, words } = asking;
    const number = numberOf(typed);
    if (number !== undefined) {
      const known = await book.memberKnownAs('discord', number);
      return known ? { ok: true, value: known } : { ok: false, why: words.option.notMet };
    }
    const all = await book.members();
    const mentioned = /^<@!?([^>]*)>$/.exec(typed.trim())?.[1];
    const chosen = all.find(({ id }) => id === (mentioned ?? typed.trim()));
    if (chosen) return { ok: true, value: chosen };
    // Whom a mention means, nobody's name decides.
    if (mentioned !== undefined || isIdLike(typed)) return { ok: false, why: words.option.notMet };
    const wanted = normalizedName(typed);
    const alike = all.filter(looksLike(typed));
    const [only] = alike;
    if (only && alike.length === 1 && normalizedName(only.name) === wanted) return { ok: true, value: only };
    const begun = all.filter(({ name }) => wanted !== '' && normalizedName(name).startsWith(wanted));
    const meant = alike.length > 0 ? alike : begun;
    return meant.length > 0
      ? { ok: false, why: words.option.whichMember(typed), choices: await choicesOf(meant, all, asking) }
      : { ok: false, why: words.option.noSuch('member', typed, []) };
  },
  async suggest(typed, asking) {
    const all = await asking.book.members();
    const wanted = normalizedName(typed);
    const some = all.filter(({ name }) => normalizedName(name).includes(wanted));
    return choicesOf(some, all, asking);
  },
};
