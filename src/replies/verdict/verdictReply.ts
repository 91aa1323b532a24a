import { present } from '../../present.ts';
import { pressToRun } from '../../contract/replyParts.ts';
import { definedOnly } from '../../definedOnly.ts';
import type { BucketEntry } from '../../studio/bucket/bucketEvent.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { restLimitOf } from '../../studio/bucket/rests.ts';
import { hours } from '../../studio/ids.ts';
import { barehanded } from '../../studio/settings/barehanded.ts';
import type { Instant } from '../../studio/ids.ts';
import { surenessOf } from '../../studio/verdict/chooseByChance.ts';
import { decide } from '../../studio/verdict/decide.ts';
import { isForDipping, judgesFlow } from '../../studio/verdict/judgedBy.ts';
import type { Verdict } from '../../studio/verdict/verdict.ts';
import type { Text } from '../../words/text/text.ts';
import type { Words } from '../../words/words.ts';
import type { Action, Asking, Reply } from '../../contract/contract.ts';
import { onceEach } from './onceEach.ts';
import { accountedBy, unloggedReply } from './unloggedReply.ts';
import { verdictActions } from './verdictActions.ts';
import { lacksWindow, windowFor, windowReply } from './windowProposed.ts';
import { factsOf, settlesFast } from './verdictFacts.ts';

/** How likely it is to be right; reckoned here where the verdict did not need it. */
const surenessData = (verdict: Verdict, state: BucketState, now: Instant): Reply['data'] => {
  const { gravity, flow, both } = verdict.chances ?? surenessOf(state, now).chances;
  const byFlow = judgesFlow(state.settings);
  return {
    gravity: gravity?.in ?? null,
    flow: byFlow ? (flow?.in ?? null) : null,
    both: byFlow ? both : (gravity?.in ?? null),
  };
};

const verdictData = ({ amounts, ...verdict }: Verdict): Reply['data'] => ({
  step: verdict.step,
  rule: verdict.rule,
  ...definedOnly({ then: verdict.then, keeperStep: verdict.keeperStep }),
  gravity: verdict.gravity,
  predicted: verdict.predicted,
  window: verdict.window && { low: verdict.window.low, high: verdict.window.high },
  gravityBand: verdict.gravityBand,
  flow: verdict.flow,
  hoursSinceStir: verdict.hoursSinceStir,
  asks: verdict.asks,
  ...amounts,
  after: verdict.after,
});

/** How to take the reading that is needed: a weight, a look at the flow, or both. */
const howToMeasure = (
  { step, rule, flow, asks }: Verdict,
  settings: BucketState['settings'],
  { verdict: w }: Words,
): Text[] => {
  if (step !== 'measure' && step !== 'stir-on') return [];
  const finger = barehanded(settings) ? w.protocolFinger : w.protocolFingerGloved;
  const look = present([judgesFlow(settings) && w.protocolCup, isForDipping(settings) && finger]);
  if (rule === 'grid' && barehanded(settings) && asks[0] === 'seconds') return [w.protocolCup];
  if (rule === 'grid' || rule === 'seconds-unknown') return look;
  return [w.protocolWeigh, ...(flow === null ? look : [])];
};

/** An entry logged by this command, and what to say with it. */
interface JustLogged {
  entry: BucketEntry;
  /** What was logged, where the entry alone does not tell. */
  text?: Text;
  /** The bucket before the entry, to show what the entry revealed. */
  before?: BucketState;
  /** A button to say that the bucket was stirred, if the reading depends on that and nobody said. */
  stirUnsaid?: Action;
  /** A sentence before the answer, where the answer alone does not show that the thing was done. */
  first?: Text;
  reasons?: Text[];
  cautions?: Text[];
  /** Buttons for what was seen. */
  actions?: readonly Action[];
  data?: Reply['data'];
}

/** Whether the verdict is missing only because nobody said that the reading was taken stirred. */
const hangsOnStir = ({ step, rule }: Verdict): boolean =>
  rule !== 'cake' && (step === 'stir' || step === 'measure');

/** A dose takes ten minutes to work, and nobody wants to stand by it. */
const tellMeLater = ({ reasons, bucket }: Verdict, words: Words): Action[] =>
  reasons.some(({ because }) => because === 'dose-at-work')
    ? [pressToRun(words.reminder.tellIn10, 'remind me', { bucket: String(bucket), in: '10min' })]
    : [];

/** A bucket's verdict as a reply. */
export const verdictReply = async (
  state: BucketState,
  asking: Asking,
  logged?: JustLogged,
): Promise<Reply> => {
  const { words, now, role, book } = asking;
  const studio = await book.studio();
  const verdict = decide(state, { now, role, sure: studio.sure });
  // Names are looked up only where one is shown, because a lookup costs time.
  const named = verdict.reasons.some(({ because }) => because === 'held');
  const members = new Map((named ? await book.members() : []).map(({ id, name }) => [id, name]));
  const setting = {
    measures: studio,
    ...definedOnly({ cakeSince: state.cake?.since }),
    member: (id: Asking['member']) => ({ member: id, name: members.get(id) ?? words.someone }),
  };
  const { entry, text, before, stirUnsaid: unsaid, first, data }: Partial<JustLogged> = logged ?? {};
  const account = before && accountedBy(before, state);
  const unlogged = account?.found && unloggedReply(account.found, state.no, { words, studio });
  const facts = factsOf(verdict, state, unsaid !== undefined, asking);
  const lacks = lacksWindow(verdict);
  const proposal = lacks ? await windowFor(state, asking) : undefined;
  const window = lacks ? windowReply(state, proposal, asking) : undefined;
  const answer =
    (role === 'keeper' && verdict.step !== 'use' && proposal && words.verdict.proposed(proposal)) ||
    words.verdict.title(verdict, studio);
  const title = unsaid && hangsOnStir(verdict) ? words.verdict.wasItStirred(answer) : answer;
  return {
    kind: 'answer',
    title: [
      ...(first ? [...first, ' '] : []),
      ...words.verdict.headline(state.settings.name, title),
      ...(verdict.step === 'use' && settlesFast(state)
        ? [' ', ...words.verdict.stirAgain(restLimitOf(state).limit / hours(1))]
        : []),
    ],
    ...(entry && { logged: { entry: entry.id, text: text ?? words.log.what(entry, studio.units) } }),
    // At most three. A member who has just logged something knows when it was stirred.
    facts: unlogged ? [...facts.slice(0, 2), ...unlogged.facts] : facts,
    dont: verdict.dont.map(words.verdict.dont),
    cautions: onceEach([...(logged?.cautions ?? []), ...verdict.cautions.map(words.verdict.caution)]),
    reasons: present([
      ...(logged?.reasons ?? []),
      ...(unlogged?.reasons ?? []),
      account?.explained && words.unlogged.addsUp,
      ...verdict.reasons.map((reason) => words.verdict.reason(reason, setting)),
      verdict.step === 'deflocculate' && words.dose.product(studio.deflocculant),
      ...howToMeasure(verdict, state.settings, words),
      verdict.then && words.verdict.afterThat(verdict.then),
    ]),
    actions: present([
      unsaid,
      ...(window?.actions ?? []),
      ...(unlogged?.actions ?? []),
      ...(logged?.actions ?? []).slice(0, 1),
      // The stir is asked about already: a second button for it would confuse.
      ...verdictActions(verdict, state.settings, asking, studio).filter(
        ({ line }) => !unsaid || !line.startsWith('/stirred'),
      ),
      ...tellMeLater(verdict, words),
    ]).slice(0, 3),
    data: {
      ...definedOnly({ entry: entry?.id }),
      ...data,
      ...definedOnly({ unlogged: unlogged?.data }),
      bucket: state.no,
      verdict: { ...verdictData(verdict), ...window?.data, sure: surenessData(verdict, state, now) },
    },
  };
};
