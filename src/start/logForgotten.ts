import type { Log } from '../contract/log.ts';
import type { MemberId } from '../studio/ids.ts';
import { forgetWords } from '../words/platform/forgetWords.ts';
import type { Store } from '../store/openStore.ts';

/**
 * Logs who was forgotten, by ids that lead to nobody any more. In an older copy they lead to somebody again: so the log
 * says whom to forget there.
 */
export const logForgotten = (store: Pick<Store, 'followPeople'>, log: Log): (() => void) => {
  const told = new Set<MemberId>();
  return store.followPeople((change) => {
    if (change.kind !== 'erased' || change.members.every((member) => told.has(member))) return;
    const { studio, members } = change;
    for (const member of members) told.add(member);
    log.info({ studio, members }, forgetWords.logged);
  });
};
