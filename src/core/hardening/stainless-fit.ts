/**
 * Coefficients made by `tests/fitting/fit-stainless.ts` from rows that were read; a test makes them again.
 * `level`: constant [HRC], share of the hardness of the martensite, HRC for each % of carbon in carbide.
 * `softening`: temper of 1 h [°C] with the hardness lost since 150 °C [HRC].
 */
export const STAINLESS_FIT = {
  level: [3.852, 0.9893, 4.291] as const,
  softening: [
    [150, 0],
    [200, 0.517],
    [300, 2.224],
    [400, 3.203],
    [450, 4.005],
    [500, 5.116],
    [550, 10.866],
    [600, 18.366],
    [650, 21.366],
  ] as const,
  halfWidth: 2.5,
};
