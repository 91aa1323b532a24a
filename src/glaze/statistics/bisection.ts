/** The place between two at which something stops holding, found by halving the distance so many times. */
export const bisection = (
  holds: (x: number) => boolean,
  { low, high, rounds }: Record<'low' | 'high' | 'rounds', number>,
): number => {
  let [below, above] = [low, high];
  for (let i = 0; i < rounds; i++) {
    const middle = (below + above) / 2;
    if (holds(middle)) below = middle;
    else above = middle;
  }
  return (below + above) / 2;
};
