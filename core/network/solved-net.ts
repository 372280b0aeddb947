import type { Balance, NetState } from './balance.ts';
import type { CompiledShop } from './compile.ts';
import { mainLegs } from './main-leg.ts';
import type { MainLeg } from './main-leg.ts';

/** A shop in balance, as results read it. */
export interface SolvedNet {
  readonly shop: CompiledShop;
  readonly state: NetState;
  readonly balance: Balance;
  readonly mainLegs: ReadonlyMap<number, MainLeg>;
}

export const solvedNet = (shop: CompiledShop, state: NetState, balance: Balance): SolvedNet => ({
  shop,
  state,
  balance,
  mainLegs: mainLegs(shop, state),
});
