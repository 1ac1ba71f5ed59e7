/**
 * Coefficients made by `tests/fitting/fit-stainless.ts` from rows that were read; a test makes them again.
 * `level`: constant [HRC], share of the hardness of the martensite, most that carbide adds [HRC].
 * `carbideScale`: carbon in carbide [mass %] by which carbide has added 63 % of that.
 * `softening`: temper of 1 h [°C] with the hardness lost since 150 °C [HRC].
 */
export const STAINLESS_FIT = {
  level: [5.426, 0.9459, 3.701] as const,
  carbideScale: 0.1,
  softening: [
    [150, 0],
    [200, 0.346],
    [300, 2.507],
    [400, 3.056],
    [450, 4.045],
    [500, 4.853],
    [550, 10.603],
    [600, 18.103],
    [650, 21.103],
  ] as const,
  halfWidth: 2.5,
};
