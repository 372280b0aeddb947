/** A safety factor to two figures, cut and not rounded, so that a low one never reads as the least that will do. */
export const factorText = (factor: number): string => {
  const step = 10 ** (Math.floor(Math.log10(factor)) - 1);
  return (Math.floor(factor / step + 1e-9) * step).toPrecision(2);
};
