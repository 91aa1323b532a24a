import { type Belief, ownPlaces, zeros } from './mixture.ts';

/** The belief with a place for how far an instrument is off, and that place. */
export const withInstrument = (belief: Belief, name: string, sd: number): { belief: Belief; at: number } => {
  const known = belief.instruments.indexOf(name);
  if (known >= 0) return { belief, at: ownPlaces + known };
  const components = belief.components.map((one) => {
    const size = one.mean.length;
    const covariance: number[] = [];
    for (let i = 0; i < size; i++) covariance.push(...one.covariance.slice(i * size, (i + 1) * size), 0);
    covariance.push(...zeros(size), sd * sd);
    return { ...one, mean: [...one.mean, 0], covariance };
  });
  const instruments = [...belief.instruments, name];
  return { belief: { ...belief, instruments, components }, at: ownPlaces + belief.instruments.length };
};
