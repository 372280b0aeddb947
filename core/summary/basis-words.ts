import type { Basis } from '../quantities/sourced.ts';

/** What a figure rests on, in words. */
export const BASIS_WORDS: Readonly<Record<Basis, string>> = {
  published: 'published; read there or where a later work quotes it',
  'from-memory': 'published, from memory; the page was not seen',
  'common-practice': 'common practice of the trade; no single source',
  assumed: 'assumed: change it where you know better',
  'measured-by-user': 'measured by you',
};
