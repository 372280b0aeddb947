import { MOST_HOURS } from '../../core/upkeep/hours.ts';

/** Running hours that somebody typed, with or without their unit; null for anything that is none. */
export function readHours(text: string): number | null {
  const found = /^\s*(\d+(?:[.,]\d+)?)\s*(?:h|hours?)?\s*$/i.exec(text);
  const hours = found ? Number(found[1]!.replace(',', '.')) : NaN;
  return hours >= 1 && hours <= MOST_HOURS ? hours : null;
}
