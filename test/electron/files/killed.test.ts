import { expect, it } from 'vitest';
import { killSaves } from '../killed-saves.ts';

/** More of them run by `npm run fuzz -- --kills 200`. */
const KILLS = Number(process.env['CHIPDRAFT_KILLS'] ?? 12);

it(
  `a program that is killed ${KILLS} times while it keeps edits and saves: the file is whole, the newest edit is offered`,
  { timeout: 60_000 + KILLS * 2000 },
  async () => {
    const { kills, withinWrites, faults } = await killSaves(KILLS, 7);
    expect(faults).toEqual([]);
    expect(kills).toBe(KILLS);
    // at least one kill struck in the middle of a write; otherwise the test has shown nothing
    expect(withinWrites).toBeGreaterThan(0);
  },
);
