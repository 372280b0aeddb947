/** A step of the integration: the state at its end, the rates there and an estimate of the error. */
export interface Step {
  readonly state: Float64Array;
  readonly error: Float64Array;
}

const combine = (state: Float64Array, h: number, ...terms: [number, Float64Array][]): Float64Array =>
  state.map((value, i) => value + h * terms.reduce((sum, [weight, rates]) => sum + weight * rates[i]!, 0));

/**
 * One step of the Runge-Kutta pair of third and second order of Bogacki and Shampine.
 *
 * `k2 = f(y + h k1/2)`, `k3 = f(y + 3 h k2/4)`, `y1 = y + h (2 k1 + 3 k2 + 4 k3)/9`; with `k4 = f(y1)` the error is
 * `h (-5 k1/72 + k2/12 + k3/9 - k4/8)`. `k4` is the first rate of the next step. Sums that the rates conserve are
 * conserved.
 *
 * Source: Bogacki and Shampine, Applied Mathematics Letters 2 (1989) 321-325; from memory.
 */
export function bogackiShampine(
  state: Float64Array,
  first: Float64Array,
  h: number,
  rates: (state: Float64Array, isEnd: boolean) => Float64Array,
): Step & { readonly last: Float64Array } {
  const second = rates(combine(state, h, [1 / 2, first]), false);
  const third = rates(combine(state, h, [3 / 4, second]), false);
  const end = combine(state, h, [2 / 9, first], [3 / 9, second], [4 / 9, third]);
  const last = rates(end, true);
  const error = state.map(
    (_, i) => h * ((-5 / 72) * first[i]! + second[i]! / 12 + third[i]! / 9 - last[i]! / 8),
  );
  return { state: end, error, last };
}

/** State inside a step at its share `s`, by the cubic through both ends and their rates. */
export function insideStep(
  before: { readonly state: Float64Array; readonly rates: Float64Array },
  after: { readonly state: Float64Array; readonly rates: Float64Array },
  h: number,
  s: number,
): Float64Array {
  const a = (1 + 2 * s) * (1 - s) ** 2;
  const b = s * (1 - s) ** 2;
  const c = s * s * (3 - 2 * s);
  const d = s * s * (s - 1);
  return before.state.map(
    (value, i) => a * value + c * after.state[i]! + h * (b * before.rates[i]! + d * after.rates[i]!),
  );
}
