/** A flat disc with a hole and the loads on it; radii in m, stress in Pa, mass force `rho w^2` in kg/(m3 s2). */
export interface DiscLoads {
  readonly inner: number;
  readonly outer: number;
  readonly nu: number;
  readonly E: number;
  readonly massForce?: number;
  readonly rimTraction?: number;
  /** A pull on a circle inside, stated as the traction that the same pull has when spread over the rim. */
  readonly ringLoad?: { readonly radius: number; readonly perRimArea: number };
}

/** Stress and movement at the edges of the disc. */
export interface SolvedDisc {
  readonly boreHoop: number;
  readonly rimHoop: number;
  readonly rimGrowth: number;
}

/** Movement and radial stress at a radius. */
type State = readonly [number, number];

/**
 * Equilibrium of a thin disc, `d(s_r)/dr = (s_h - s_r)/r - rho w^2 r`, with Hooke's law for plane stress, integrated from the
 * hole outwards in logarithmic steps (Runge-Kutta, fourth order). The movement of the hole is found from the stress that the
 * rim must have: the equations are linear, so two trials give it.
 */
export function solveDisc(loads: DiscLoads): SolvedDisc {
  const { inner, outer, nu, E } = loads;
  const trial = (boreMovement: number) => march(loads, [boreMovement, 0]);
  const [, still] = trial(0);
  // without loads, so that the two are not drowned in each other's rounding
  const [, perMovement] = march({ inner, outer, nu, E }, [1, 0]);
  const bore = ((loads.rimTraction ?? 0) - still) / perMovement;
  const [rimGrowth, rimRadial] = trial(bore);
  return { boreHoop: (E * bore) / inner, rimHoop: (E * rimGrowth) / outer + nu * rimRadial, rimGrowth };
}

/** State at the rim from the state at the hole; the radial stress drops by a ring's pull where it acts. */
function march(loads: DiscLoads, start: State): State {
  const { inner, outer, ringLoad } = loads;
  if (!ringLoad) return leg(loads, start, inner, outer);
  const [u, radial] = leg(loads, start, inner, ringLoad.radius);
  const jump = (ringLoad.perRimArea * outer) / ringLoad.radius;
  return leg(loads, [u, radial - jump], ringLoad.radius, outer);
}

function leg(loads: DiscLoads, start: State, from: number, to: number): State {
  const steps = 4000;
  const h = Math.log(to / from) / steps;
  let state = start;
  for (let i = 0; i < steps; i++) {
    const x = Math.log(from) + i * h;
    const k1 = slope(loads, state, x);
    const k2 = slope(loads, ahead(state, k1, h / 2), x + h / 2);
    const k3 = slope(loads, ahead(state, k2, h / 2), x + h / 2);
    const k4 = slope(loads, ahead(state, k3, h), x + h);
    state = [0, 1].map(
      (j) => state[j]! + (h / 6) * (k1[j]! + 2 * k2[j]! + 2 * k3[j]! + k4[j]!),
    ) as unknown as State;
  }
  return state;
}

const ahead = (state: State, k: State, h: number): State => [state[0] + h * k[0], state[1] + h * k[1]];

/** Slopes over the logarithm of the radius. */
function slope({ nu, E, massForce = 0 }: DiscLoads, [u, radial]: State, x: number): State {
  const r = Math.exp(x);
  const hoop = (E * u) / r + nu * radial;
  const strain = (radial - nu * hoop) / E;
  return [r * strain, hoop - radial - massForce * r ** 2];
}
