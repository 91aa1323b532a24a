/** Long work, a little at each step, so that others can have their turn in between. */
export type Steps<T> = Generator<void, T>;

/** Does all that is left of it at once. */
export const finished = <T>(steps: Steps<T>): T => {
  let step = steps.next();
  while (step.done !== true) step = steps.next();
  return step.value;
};

/** Does the same with each, one at a step. */
export function* eachInSteps<T, R>(all: readonly T[], work: (one: T) => R): Steps<R[]> {
  const done: R[] = [];
  for (const one of all) {
    done.push(work(one));
    yield;
  }
  return done;
}
