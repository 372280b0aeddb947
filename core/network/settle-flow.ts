import type { NetState } from './balance.ts';
import type { CompiledShop } from './compile.ts';
import { carryDust, takeDust } from './dust.ts';
import type { DustResult } from './dust.ts';
import { solveNet } from './newton.ts';
import type { NetOutcome, PlanCache } from './newton.ts';
import { stillElements } from './still.ts';

/** A balance of flows, with the dust that travels along them and the loss that it adds. */
export interface SettledFlow {
  readonly converged: true;
  readonly outcome: Extract<NetOutcome, { converged: true }>;
  readonly dust: DustResult;
}

/** Rounds in which dust and flow are brought to agree; the dust's part is small, so two or three do. */
const DUST_ROUNDS = 8;

/** Solves, and puts still what nothing drives, so that no result or finding speaks of rounding there. */
export function solveStill(...args: Parameters<typeof solveNet>): NetOutcome {
  const outcome = solveNet(...args);
  if (outcome.converged) {
    for (const e of stillElements(args[0], outcome.activity)) outcome.state.flow_kgs[e] = 0;
  }
  return outcome;
}

/** Flow and dust of the setting that was applied, brought to agree. */
export function settleFlow(
  shop: CompiledShop,
  plans: PlanCache,
  warm: NetState | null,
): SettledFlow | Extract<NetOutcome, { converged: false }> {
  const { packed } = shop;
  let outcome = solveStill(packed, { warm, plans });
  if (!outcome.converged) return outcome;
  let dust = carryDust(shop, outcome.state, outcome.activity.elements, false);
  for (let round = 0; round < DUST_ROUNDS && shop.document.options.solidsLoss; round++) {
    if (!takeDust(shop, dust)) break;
    outcome = solveStill(packed, { warm: outcome.state, plans });
    if (!outcome.converged) return outcome;
    dust = carryDust(shop, outcome.state, outcome.activity.elements, false);
  }
  return { converged: true, outcome, dust };
}
