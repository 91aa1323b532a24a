/** ln Γ(x), x > 0. Lanczos 1964, with Godfrey's coefficients, g = 7 (from memory). */
export const logGamma = (x: number): number => {
  const c = [
    676.5203681218851, -1259.1392167224028, 771.3234287776531, -176.6150291621406, 12.507343278686905,
    -0.13857109526572012, 9.984369578019572e-6, 1.5056327351493116e-7,
  ];
  const series = c.reduce((sum, coefficient, i) => sum + coefficient / (x + i), 0.9999999999998099);
  const t = x + 6.5;
  return (x - 0.5) * Math.log(t) - t + Math.log(Math.sqrt(2 * Math.PI) * series);
};
