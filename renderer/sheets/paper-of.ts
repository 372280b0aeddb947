import type { UnitSystem } from '../../core/quantities/dimensions.ts';
import type { Paper } from '../../core/summary/page-style.ts';

/** Paper that was chosen, else what goes with the units. */
export const paperOf = ({ paper }: { readonly paper: '' | Paper }, units: UnitSystem): Paper =>
  paper === '' ? (units === 'us' ? 'letter' : 'a4') : paper;
