import type { App } from './app.ts';
import type { StudioId } from '../studio/ids.ts';
import { sayWords } from '../words/platform/sayWords.ts';
import { UsageProblem } from './exitCodeOf.ts';

/** The studio that was named, otherwise the only one; undefined if there is none yet. */
export const studioAmong = (
  studios: readonly { id: StudioId; name: string }[],
  wanted: string | undefined,
): StudioId | undefined => {
  if (wanted !== undefined) {
    const byId = studios.filter(({ id }) => id === wanted);
    const [found, ...namesakes] = byId.length > 0 ? byId : studios.filter(({ name }) => name === wanted);
    if (!found) throw new UsageProblem(sayWords.noStudio(wanted, studios));
    if (namesakes.length > 0) throw new UsageProblem(sayWords.whichStudio(studios));
    return found.id;
  }
  const [only, ...others] = studios;
  if (only && others.length > 0) throw new UsageProblem(sayWords.whichStudio(studios));
  return only?.id;
};

/** The chosen studio of an open file. A new file gets a studio. */
export const chosenStudio = async ({ store }: App, wanted: string | undefined): Promise<StudioId> =>
  studioAmong(await store.people.studios(), wanted) ??
  store.people.studioOf('terminal', 'here', sayWords.ownStudio);
