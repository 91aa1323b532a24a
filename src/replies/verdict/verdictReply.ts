import { definedOnly } from '../../definedOnly.ts';
import type { BucketEntry } from '../../studio/bucket/bucketEvent.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { barehanded } from '../../studio/settings/barehanded.ts';
import type { Instant } from '../../studio/ids.ts';
import { usualSure } from '../../studio/settings/studio.ts';
import { askedWhenMeasuring, surenessOf } from '../../studio/verdict/chooseByChance.ts';
import { decide } from '../../studio/verdict/decide.ts';
import type { Verdict } from '../../studio/verdict/verdict.ts';
import type { Text } from '../../words/text/text.ts';
import type { Words } from '../../words/words.ts';
import type { Action, Asking, Reply } from '../../contract/contract.ts';
import { onceEach } from './onceEach.ts';
import { accountedBy, unloggedReply } from './unloggedReply.ts';
import { verdictActions } from './verdictActions.ts';
import { factsOf } from './verdictFacts.ts';

/** How sure it is to be right, and what is wanted next: a reading, when one is asked for. */
const surenessData = ({ step }: Verdict, state: BucketState, now: Instant, sure: number): Reply['data'] => {
  const sureness = surenessOf(state, now);
  const { gravity, flow, both } = sureness.chances;
  const stirredFor = state.stir?.minutes ?? 0;
  return {
    asks: step === 'measure' ? askedWhenMeasuring(sureness, { sure, stirredFor }) : [],
    sure: { gravity: gravity?.in ?? null, flow: flow?.in ?? null, both },
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
  ...amounts,
  after: verdict.after,
});

/** How to take the reading that is needed: a weight, a look at the flow, or both. */
const howToMeasure = ({ step, rule, flow }: Verdict, bare: boolean, { verdict: w }: Words): Text[] => {
  if (step !== 'measure' && step !== 'stir-on') return [];
  const look = [w.protocolCup(), bare ? w.protocolFinger() : w.protocolFingerGloved()];
  if (rule === 'grid') return look;
  return [w.protocolWeigh(), ...(flow === null ? look : [])];
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
  data?: Reply['data'];
}

/** Whether the verdict is missing only because nobody said that the reading was taken stirred. */
const hangsOnStir = ({ step, rule }: Verdict): boolean =>
  rule !== 'cake' && (step === 'stir' || step === 'measure');

/** A bucket's verdict as a reply. */
export const verdictReply = async (
  state: BucketState,
  asking: Asking,
  logged?: JustLogged,
): Promise<Reply> => {
  const { words, now, role, book } = asking;
  const verdict = decide(state, { now, role });
  const studio = await book.studio();
  // Names are looked up only where one is shown, because a lookup costs time.
  const named = verdict.reasons.some(({ because }) => because === 'held');
  const members = new Map((named ? await book.members() : []).map(({ id, name }) => [id, name]));
  const cake = state.cake?.since;
  const setting = {
    units: studio.units,
    ...definedOnly({ cakeSince: cake }),
    member: (id: Asking['member']) => ({ member: id, name: members.get(id) ?? words.someone }),
  };
  const account = logged?.before && accountedBy(logged.before, state);
  const unlogged = account?.found && unloggedReply(account.found, state.no, { words, studio });
  const unsaid = logged?.stirUnsaid;
  const facts = factsOf(verdict, state, unsaid !== undefined, asking);
  const answer = words.verdict.title(verdict, studio.units);
  const title = unsaid && hangsOnStir(verdict) ? words.verdict.wasItStirred(answer) : answer;
  const protocol = howToMeasure(verdict, barehanded(state.settings), words);
  return {
    kind: 'answer',
    title: [
      ...(logged?.first ? [...logged.first, ' '] : []),
      ...words.verdict.headline(state.settings.name, title),
    ],
    ...(logged && {
      logged: { entry: logged.entry.id, text: logged.text ?? words.log.what(logged.entry, studio.units) },
    }),
    // At most three. A member who has just logged something knows when it was stirred.
    facts: unlogged ? [...facts.slice(0, 2), ...unlogged.facts] : facts,
    dont: verdict.dont.map(words.verdict.dont),
    cautions: onceEach([...(logged?.cautions ?? []), ...verdict.cautions.map(words.verdict.caution)]),
    reasons: [
      ...(logged?.reasons ?? []),
      ...(unlogged?.reasons ?? []),
      ...(account?.explained ? [words.unlogged.addsUp] : []),
      ...verdict.reasons.map((reason) => words.verdict.reason(reason, setting)),
      ...protocol,
      ...(verdict.then ? [words.verdict.afterThat(verdict.then)] : []),
    ],
    actions: [
      ...(unsaid ? [unsaid] : []),
      ...(unlogged?.actions ?? []),
      // The stir is asked about already: a second button for it would confuse.
      ...verdictActions(verdict, asking, studio).filter(
        ({ line }) => !unsaid || !line.startsWith('/stirred'),
      ),
    ].slice(0, 3),
    data: {
      ...definedOnly({ entry: logged?.entry.id }),
      ...logged?.data,
      ...definedOnly({ unlogged: unlogged?.data }),
      bucket: state.no,
      verdict: { ...verdictData(verdict), ...surenessData(verdict, state, now, studio.sure ?? usualSure) },
    },
  };
};
