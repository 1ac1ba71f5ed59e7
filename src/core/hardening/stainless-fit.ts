/**
 * Coefficients made by `tests/fitting/fit-stainless.ts` from rows that were read; a test makes them again.
 * `level`: constant [HRC], share of the hardness of the martensite, most that carbide adds [HRC].
 * `carbideScale`: carbon in carbide [mass %] by which carbide has added 63 % of that.
 * `softening`: temper of 1 h [°C] with the hardness lost since 150 °C [HRC].
 */
export const STAINLESS_FIT = {
  level: [5.679, 0.93975, 3.831] as const,
  carbideScale: 0.1,
  softening: [
    [150, 0],
    [200, 0.392],
    [300, 2.314],
    [400, 3.028],
    [450, 4.032],
    [500, 4.823],
    [550, 10.573],
    [600, 18.073],
    [650, 21.073],
  ] as const,
  halfWidth: 2.5,
};
