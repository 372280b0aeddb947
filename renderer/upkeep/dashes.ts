/** Strokes by which lines are told apart without colour; the setting on screen is thick and in colour beside. */
const DASHES = ['', '9 3', '3 3', '10 3 2 3', '1 4', '14 4', '6 2 1 2 1 2'];

export const dashOf = (i: number): string => DASHES[i % DASHES.length]!;
