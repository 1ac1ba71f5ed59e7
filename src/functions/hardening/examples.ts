import type { Example } from "../declare";

const EQUATION = "worked value of van Bohemen's equation on the calculated carbon in solution";

const GRADE_SERIES = "plate calculation, series by grade";

export const CRITICAL: readonly Example[] = [
  {
    given: ["C 0.465 Mn 0.75 Si 0.22"],
    gives: [721, 783, "Ac3", 323],
    within: 4,
    source:
      "Andrews 721; iron-carbon line 773.8 with 0.22 % Si (+9.8); van Bohemen's equation at the middle of 1045, 323",
  },
  {
    given: ["C 1.0 Mn 0.35 Si 0.25 Cr 1.45", 845],
    gives: [751, 893, "Acm", 200],
    within: 4,
    source: "Andrews 751; full equilibrium calculation 893; van Bohemen on what is dissolved 200",
  },
  { given: ["H13"], gives: [830, 915, "as printed", 300], source: "Lucefin, technical card 1.2344" },
  {
    given: ["440C", 1040],
    gives: ["", "", "", 248],
    within: 10,
    source: "Capdevila on 0.376 % C and 12.0 % Cr",
  },
];

export const DECARB: readonly Example[] = [
  {
    given: ["C 0.50 Mn 0.75", 850, 10],
    gives: 0.135,
    within: 0.02,
    source: "error-function solution with Ågren's diffusivity (1986, from memory)",
  },
  {
    given: ["C 0.50 Mn 0.75", 1050, 30],
    gives: 0.73,
    within: 0.05,
    source: "error-function solution with Ågren's diffusivity (1986, from memory)",
  },
];

export const GRIND_ALLOWANCE: readonly Example[] = [
  {
    given: ["C 0.50 Mn 0.75", 1100, 10],
    gives: [0.72, "…"],
    within: 0.08,
    source:
      "by hand: skin 2.326 √(8.2e-11 m²/s · 600 s) = 0.52 mm (Lee, Matlock and Van Tyne's D between 0.2 and 0.8 % C), half of 0.362 mm of scale (Paidassi type, from memory)",
  },
];

export const DISSOLVED: readonly Example[] = [
  {
    given: ["C 1.0 Cr 1.45 Mn 0.35 Si 0.25", 845],
    gives: [0.871, 1.23],
    within: 0.03,
    source: "equilibrium calculation of 52100: 0.867 % C, 1.23 % Cr",
  },
  { given: ["1095", 760], gives: [0.827, 0], within: 0.002, source: "equilibrium calculation of 1095" },
  {
    given: ["5160", 830],
    gives: [0.6, 0.8],
    source: "above Ac3 all is in solution: the grade's own figures",
  },
  { given: ["D2", 1020], gives: [0.569, 6.5], source: "equilibrium calculation of D2: not stainless" },
  { given: ["440C", 1040], gives: [0.376, 12], source: "equilibrium calculation of 440C" },
];

export const HARDENABILITY: readonly Example[] = [
  {
    given: ["C 0.22 Mn 0.80 Si 0.18 Ni 0.10 Cr 0.43 Mo 0.25 Cu 0.10 V 0.05"],
    gives: 49.53,
    within: 0.76,
    source: "ASTM A255, worked example of SAE 4118 modified: 1.95 in, rounded factors; 0.03 in allowed",
  },
];

export const HARDENING: readonly Example[] = [
  {
    given: ["1095"],
    gives: [855, 855, "800 °C (1472 °F)", 800, 800, "1.5 min for each mm", "oil", 66, 66, "…"],
    source: "Rockblade Kilns, 1095 product page",
  },
  {
    given: ["D2"],
    gives: ["", "", "870 °C (1598 °F)", 995, 1025, "30 to 45 min", "air", 63, 63, "…"],
    source: "Crucible, D2 data sheet",
  },
  {
    given: ["5160"],
    gives: [850, 880, "…", 830, 860, "", "oil", 54, "", "…"],
    source: "Saarstahl, specification sheet 55Cr3 (names SAE 5160); 54 HRC is a floor in the core",
  },
];

export const JOMINY: readonly Example[] = [
  {
    given: ["C 0.22 Mn 0.80 Si 0.18 Ni 0.10 Cr 0.43 Mo 0.25 Cu 0.10 V 0.05", 3],
    gives: 45,
    within: 0.3,
    source: "ASTM A255, metric factors worked by hand at an ideal diameter of 49.5 mm",
  },
];

export const MAX_SECTION: readonly Example[] = [
  { given: ["1095", "fast oil"], gives: [2.9, 5.2, "…"], source: GRADE_SERIES },
  { given: ["1084", "fast oil"], gives: [5.6, 9.3, "…"], within: 0.11, source: GRADE_SERIES },
  { given: ["5160", "fast oil"], gives: [22, 33, "…"], source: GRADE_SERIES },
  { given: ["80CrV2", "agitated water"], gives: [15, 22, "…"], source: GRADE_SERIES },
];

export const QUENCHED_HRC: readonly Example[] = [
  {
    given: ["C 0.40 Mn 0.75"],
    gives: 56.3,
    within: 0.1,
    source: "ASTM A255 initial hardness at 0.40 % C, less a trace of retained austenite",
  },
  { given: ["C 0.20 Mn 0.75"], gives: 44.4, within: 0.1, source: "ASTM A255 initial hardness at 0.20 % C" },
  { given: ["1095", 800], gives: 66, within: 1, source: "Rockblade Kilns, 1095 in oil" },
  { given: ["O1", 802], gives: 65, within: 1, source: "Diamond Metals, O1 data page" },
  { given: ["D2"], gives: 63, source: "Crucible, D2 data sheet, 1010 °C" },
];

export const QUENCHES: readonly Example[] = [];

export const RETAINED: readonly Example[] = [
  { given: ["C 1.0 Mn 0.35 Si 0.25 Cr 1.45", 845], gives: 11, within: 0.3, source: EQUATION },
  { given: ["C 1.0 Mn 0.35 Si 0.25 Cr 1.45", 875], gives: 15.7, within: 0.3, source: EQUATION },
  { given: ["C 1.0 Mn 0.35 Si 0.25 Cr 1.45", 845, -75], gives: 3.4, within: 0.3, source: EQUATION },
  { given: ["C 0.60 Mn 0.88 Si 0.25 Cr 0.80", 845], gives: 2.6, within: 0.1, source: EQUATION },
  {
    given: ["440C", 1080],
    gives: 10.9,
    within: 0.3,
    source:
      "worked by hand: Koistinen and Marburger with Ms by Capdevila, 0.434 % C and 13.0 % Cr, Mn and Si 0.5 %",
  },
];

export const SECTION_FIT: readonly Example[] = [
  {
    given: ["1095", 30, 7, 1.5, "agitated water", 0.001, 8, 0.0002, null, null, null, 6.7],
    gives: [0.0016, 1, 0],
    within: 0.0007,
    source:
      "a separate program for the same section: 0.8 mm of clay with 0.5 W/mK hardens 6.0 mm at a nose of 0.35 s and 7.1 mm at 0.5 s; 1095 has 0.44 s",
  },
];

export const SECTION_PROFILE: readonly Example[] = [
  {
    given: ["1084", 30, 4, 0.5, "fast oil"],
    gives: Array.from({ length: 30 }, (_, column) => [column + 0.5, 63.8, 65.8, 67.8]),
    within: 1.5,
    source:
      "a separate program for the same conduction: 4 mm 1084 in fast oil is fully hard, 65.8 HRC, from edge to spine, 2 HRC allowed either way",
  },
];

export const SECTION_QUENCH: readonly Example[] = [
  {
    given: ["1084", 30, 4, 0.5, "fast oil"],
    gives: [30, 66, 66, 66, "…"],
    within: 1,
    source:
      "a separate program for the same conduction: 4 mm 1084 in fast oil is fully hard, 65.8 HRC, from edge to spine",
  },
];

export const SOAK: readonly Example[] = [
  {
    given: [6, 800],
    gives: [8.6, 9, 17.6],
    within: 0.15,
    source: "heat balance worked in small steps of time: 8.6 min; 1.5 min/mm by Rockblade Kilns for 1095",
  },
  {
    given: [3, 200],
    gives: [9.2, "", 9.2],
    within: 0.15,
    source: "heat balance worked in small steps of time: 9.2 min",
  },
  {
    given: [3, 1050, "440C"],
    gives: [2, 30, 32],
    within: 0.15,
    source: "heat balance worked in small steps of time: 2.0 min; Crucible 440C, 30 to 45 min",
  },
];
