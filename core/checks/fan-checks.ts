import { fanReach } from '../network/operating-points.ts';
import type { Finding } from '../network/solution.ts';
import { finding, printApart } from './finding.ts';
import type { Check } from './check.ts';
import { deepest } from './run-checks.ts';
import { keptRating, suctionAtShutOff } from './suction.ts';

/** Fans: stability, reach of the curve, and what they can pull with the inlet blocked. */
export const checkFans: Check = ({ shop, result }, print) => {
  const found: Finding[] = [];
  shop.fans.forEach(({ element }, i) => {
    const fan = result.fans[i]!;
    if (fan.massFlow_kgs === 0) {
      found.push(finding('fan-no-path', fan.id));
      return;
    }
    if (!fan.stable) found.push(finding('fan-unstable', fan.id));
    const stable = fan.allOperatingPoints.filter((point) => point.stable);
    if (stable.length > 1) found.push(finding('fan-several-points', fan.id, String(stable.length)));
    const density_kgm3 = fan.massFlow_kgs / fan.flow_m3s;
    if (fanReach(shop.packed, element, fan.flow_m3s, density_kgm3) === 'margin') {
      found.push(finding('fan-extrapolated', fan.id, print(fan.flow_m3s, 'flow')));
    }
  });
  const pull = suctionAtShutOff(shop);
  const check = (id: string, element: number, rating_Pa: number | null, now_Pa: number) => {
    // what already stands as a danger need not be said twice
    if (rating_Pa === null || pull[element]! <= rating_Pa || now_Pa > rating_Pa) return;
    found.push(
      finding('suction-at-shut-off', id, ...printApart(print, pull[element]!, rating_Pa, 'pressure')),
    );
  };
  shop.runs.forEach(({ run, element }, i) =>
    check(run.id, element, keptRating(run), deepest(result.runs[i]!)),
  );
  shop.devices.forEach(({ thing, element }, i) =>
    check(thing.id, element, thing.maxSuction?.si ?? null, -(result.devices[i]!.inletTotalPressure_Pa ?? 0)),
  );
  return found;
};
