/** Cross-section of a round duct [m2] by its inside diameter [m]. */
export const roundArea = (diameter_m: number): number => (Math.PI / 4) * diameter_m * diameter_m;
