import type { Example } from "../declare";

/** A bar 800 mm long, 30 × 4 mm: E 207 000 MPa × 160 mm⁴ = 33.12 N m². */
const BAR = [[[0], [800]], 30, 4, "rectangle"] as const;

export const FLEX: readonly Example[] = [
  {
    // P L² / EI = 0.5: P = 0.5 × 33 120 000 / 640 000 = 25.875 N; deflection 0.16214 L, slope 14.0107°.
    given: [...BAR, null, null, null, null, null, null, null, 25.875],
    gives: [129.715, 0.19406, 258.75, 0, "", "", "", "", "", "", "", "", "…"],
    within: 5.5,
    source:
      "Bisshopp and Drucker 1945 for the deflection; 3 EI ÷ L³ for the stiffness; M c ÷ I of the straight bar for the stress",
  },
];

export const RING: readonly Example[] = [
  {
    // 22.3733 √(EI ÷ ρA) ÷ (2π L²) with ρA 0.942 kg/m; nodes at 0.22416 and 0.77584 of the length.
    given: [...BAR],
    gives: [32.99, 179.33, 620.67, 90.94],
    within: 5e-3,
    source: "uniform free bar, Euler-Bernoulli: cos b cosh b = 1",
  },
];

export const EDGE_LOAD: readonly Example[] = [
  {
    // Yield at 52 HRC by the relation; first = Rp c tan²15° ÷ 0.75; whole = Rp b² ÷ (6 (b ÷ (2 tan 15°) - c ÷ 2)).
    given: [52, 0.4, 15],
    gives: [14.2, 0.1, "…", 57.0],
    within: 1.5,
    source: "by hand from the bending stress 6 M ÷ t² of a wedge",
  },
];

export const EDGE_FOR_LOAD: readonly Example[] = [
  {
    given: [52, 57.0, 15],
    gives: 0.4,
    within: 0.02,
    source: "the inverse of EDGE_LOAD by hand",
  },
];

export const THICKNESS_FOR_FLEX: readonly Example[] = [
  {
    // Stiffness goes with the cube of the thickness: twice 0.194063 N/mm takes 2^(1/3).
    given: [...BAR, null, null, null, null, null, null, 0.388125],
    gives: [1.259921, 5.039684],
    within: 1e-5,
    source: "3 EI ÷ L³ of a uniform bar, by hand",
  },
];

export const BLADE_AT: readonly Example[] = [
  {
    // Half way of a diamond 50 × 6 to 20 × 3 over 800: 35 × 4.5; area 78.75; w t³ ÷ 48 = 66.445; t w³ ÷ 48 = 4019.5.
    given: [400, [[0], [800]], [[50], [20]], [[6], [3]], "diamond"],
    gives: [35, 4.5, 78.75, 66.4453, 164.85, 4019.53],
    within: 5e-3,
    source: "by hand: two triangles; ∫ w t ÷ 2 over the last 400 mm is 21 000 mm³ × 7.85",
  },
];
