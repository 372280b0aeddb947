import { fanTotalPressure } from '../fan/fan-curve.ts';
import { fanReach } from '../network/operating-points.ts';
import type { Finding } from '../network/solution.ts';
import { finding } from './finding.ts';
import type { Check } from './findings.ts';

/** Fans: stability, reach of the curve, and what they can pull with the inlet blocked. */
export const checkFans: Check = ({ shop, result }, print) => {
  const found: Finding[] = [];
  let strongest = 0;
  const out = new Float64Array(3);
  for (const { element, thing } of shop.fans) {
    const drive = shop.packed.net.elements[element]!.fan!;
    const fan = result.fans.find((f) => f.id === thing.id)!;
    fanTotalPressure(
      drive.curve,
      { flow_m3s: 0, density_kgm3: shop.air.density_kgm3, speedRatio: drive.speedRatio },
      out,
    );
    strongest += Math.max(0, out[0]!);
    if (fan.massFlow_kgs === 0) {
      found.push(finding('fan-no-path', fan.id));
      continue;
    }
    if (!fan.stable) found.push(finding('fan-unstable', fan.id));
    const stable = fan.allOperatingPoints.filter((point) => point.stable);
    if (stable.length > 1) found.push(finding('fan-several-points', fan.id, String(stable.length)));
    if (fanReach(shop.packed, element, fan.flow_m3s) === 'margin') {
      found.push(finding('fan-extrapolated', fan.id, print(fan.flow_m3s, 'flow')));
    }
  }
  const rated = [...shop.runs.map((r) => r.run), ...shop.devices.map((d) => d.thing)];
  for (const { id, maxSuction } of rated) {
    if (maxSuction === undefined || strongest <= maxSuction.si) continue;
    // what already stands as a danger need not be said twice
    if (result.runs.some((run) => run.id === id && deepest(run) > maxSuction.si)) continue;
    found.push(
      finding('suction-at-shut-off', id, print(strongest, 'pressure'), print(maxSuction.si, 'pressure')),
    );
  }
  return found;
};

const deepest = (run: { readonly pieces: readonly { readonly staticPressureAfter_Pa: number | null }[] }) =>
  -Math.min(0, ...run.pieces.map((piece) => piece.staticPressureAfter_Pa ?? 0));
