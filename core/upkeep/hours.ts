/** Most running hours that are marched: some twenty years of a workshop. */
export const MOST_HOURS = 100_000;
