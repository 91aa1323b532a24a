import { logs, optional, refusal, type Logging, type Reply } from '../src/contract/contract.ts';
import { isoInstant } from '../src/studio/time/isoInstant.ts';
import { yesNo } from '../src/contract/kinds/picks.ts';
import { text } from '../src/contract/kinds/texts.ts';
import { stampNow } from '../src/contract/entryStamp.ts';
import { shownLinkCode } from '../src/studio/people/linkCode.ts';

const offerCode = async ({ words, book, now, member }: Logging): Promise<Reply> => {
  const w = words.people.link;
  const { code, until } = await book.offerLink(member, now);
  const shown = shownLinkCode(code);
  return {
    kind: 'answer',
    title: w.offered(shown, until),
    facts: [
      { label: [w.factElsewhere], text: w.elsewhere(shown) },
      { label: [w.factRoom], text: w.atTheDoor },
    ],
    dont: [w.tellNobody],
    fleeting: true,
    data: { code: shown, until: isoInstant(until) },
  };
};

/** A keeper may have been talked into typing a code that gives its owner their rights: show whose it is first. */
const confirmJoin = async (
  code: string,
  { words, book, now, member }: Logging,
): Promise<Reply | undefined> => {
  const w = words.people.link;
  const owner = await book.offeredBy(code, now);
  if (owner === undefined || owner === member) return undefined;
  const name = (await book.member(owner))?.name ?? words.someone;
  return {
    kind: 'refusal',
    title: w.isThatYou(name),
    facts: [{ label: [w.factIfSo], text: w.surely(code) }],
    // The line contains the code.
    fleeting: true,
    data: { why: 'unsure', name },
  };
};

const joinMembers = async (code: string, sure: boolean, context: Logging): Promise<Reply> => {
  const { words, book, now, member } = context;
  const w = words.people.link;
  const before = (await book.studio()).keepers;
  const doubt = before.includes(member) && !sure ? await confirmJoin(code, context) : undefined;
  if (doubt) return doubt;
  const linked = await book.link(member, code, now);
  if (!linked.ok) return refusal(w.refused[linked.why], { why: linked.why });
  const { into } = linked;
  const { keepers } = await book.studio();
  // The joined member keeps the rights of both accounts.
  if ([member, into].some((one) => before.includes(one)) && !keepers.includes(into))
    await book.logStudio({ kind: 'keeper', member: into, keeper: true }, stampNow({ now, member: into }));
  const name = (await book.member(into))?.name ?? words.someone;
  return { kind: 'answer', title: w.linked(name), reasons: [w.whatFollows], data: { linked: true, name } };
};

export const link = logs({
  name: 'link',
  about: (w) => w.people.link.about,
  who: 'member',
  private: true,
  options: {
    code: optional({ ...text(40, 'abcd-2345'), secret: true }, (w) => w.people.link.code),
    sure: optional(yesNo, (w) => w.people.link.sure),
  },
  run: (v, context): Promise<Reply> => {
    if (context.guest) return Promise.resolve(refusal(context.words.people.link.notHere));
    return v.code === undefined ? offerCode(context) : joinMembers(v.code, v.sure === true, context);
  },
});
