/** Standard acceleration of free fall, exact by definition (NIST SP 811) [m/s2]. */
export const GRAVITY_MS2 = 9.80665;
