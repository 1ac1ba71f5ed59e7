import type { Example } from "../declare";

const TABLES = "limits of the standard as reproduced by a supplier";

export const ANALYSIS: readonly Example[] = [
  {
    given: [
      ["C", "Mn", "Si"],
      [0.95, 0.4, 0.22],
    ],
    gives: ["C 0.95 Mn 0.4 Si 0.22"],
    source: "as given",
  },
];

export const BILLET_CARBON: readonly Example[] = [
  {
    given: [
      [0.95, 0.75],
      [3, 1],
    ],
    gives: [0.9],
    within: 1e-9,
    source: "worked by hand: (3 × 0.95 + 1 × 0.75) / 4",
  },
];

export const CARBON: readonly Example[] = [
  { given: ["1095"], gives: 0.95, source: "SAE J402: the last two digits are hundredths of a percent" },
  { given: [5160], gives: 0.6, source: "SAE J402, the designation typed as a number" },
  { given: ["52100"], gives: 1, source: "SAE J402: three carbon digits" },
  { given: ["C75S"], gives: 0.75, source: "EN 10027-1: hundredths of a percent" },
  { given: ["51CrV4"], gives: 0.51, source: "EN 10027-1" },
  { given: ["X50CrMoV15"], gives: 0.5, source: "EN 10027-1" },
  { given: ["S50C"], gives: 0.5, source: "JIS G 4051" },
  { given: ["65Mn"], gives: 0.65, source: "GB/T 221" },
  { given: ["У10"], gives: 1, source: "GOST 1435: tenths of a percent" },
  { given: ["D2"], gives: 1.5, source: "ASTM A681: C 1.40-1.60, middle" },
  { given: ["1084", "low"], gives: 0.8, source: `SAE J403, ${TABLES}` },
  { given: ["1084", "high"], gives: 0.93, source: `SAE J403, ${TABLES}` },
  { given: ["304", "high"], gives: 0.08, source: "SAE J405, as a producer reproduces it" },
  { given: ["C 0.62 Mn 0.75"], gives: 0.62, source: "as given" },
];

export const CERTIFICATE: readonly Example[] = [
  {
    given: ["1075", ["C", "Mn", "P", "S"], [0.74, 0.95, 0.012, 0.008]],
    gives: [
      ["C", 0.7, 0.8, 0.74, "OK"],
      ["Mn", 0.4, 0.7, 0.95, "HIGH"],
      ["P", "", 0.04, 0.012, "OK"],
      ["S", "", 0.05, 0.008, "OK"],
      ["verdict", "", "", "", "fail: Mn high"],
    ],
    source: "SAE J403: 1075 has C 0.70-0.80, Mn 0.40-0.70, P 0.040 and S 0.050 at most",
  },
  {
    given: ["5160", ["C", "Cr", "Ni"], [0.65, 0.92, 0.1], "product"],
    gives: [
      ["C", 0.54, 0.66, 0.65, "OK"],
      ["Cr", 0.67, 0.93, 0.92, "OK"],
      ["Ni", "", "", 0.1, "NO LIMIT"],
      ["Si", 0.13, 0.37, "", "MISSING"],
      ["Mn", 0.71, 1.04, "", "MISSING"],
      ["P", "", 0.04, "", "MISSING"],
      ["S", "", 0.045, "", "MISSING"],
      ["verdict", "", "", "", "…"],
    ],
    source:
      "SAE J404 limits of 5160 with the variations of SAE J409: C 0.02, Mn 0.04, Si 0.02, P and S 0.005; Cr 0.03 from memory",
  },
];

export const COMPOSITION: readonly Example[] = [
  { given: ["5160", "Cr", "low"], gives: 0.7, source: "SAE J404: Cr 0.70-0.90" },
  { given: ["5160", "Cr"], gives: 0.8, source: "SAE J404: Cr 0.70-0.90, middle" },
  { given: ["O1", "W", "high"], gives: 0.6, source: "ASTM A681: W 0.40-0.60" },
  { given: ["304", "C", "low"], gives: "", source: "SAE J405 sets a maximum only" },
  { given: ["1095", "Si"], gives: 0.22, source: "common practice, no source: SAE J403 sets no silicon" },
  { given: ["C 0.62 Mn 0.75", "Mn"], gives: 0.75, source: "as given" },
  {
    given: ["1095"],
    gives: [
      ["C", 0.9, 1.03, 0.95],
      ["Si", "", "", 0.22],
      ["Mn", 0.3, 0.5, 0.4],
      ["P", "", 0.04, 0],
      ["S", "", 0.05, 0],
    ],
    source: "SAE J403 and ASTM A29; silicon by common practice, no source",
  },
];

export const DECODE: readonly Example[] = [
  {
    given: ["52100"],
    gives: [
      ["C", 1, "…"],
      ["Cr", 1.45, "…"],
    ],
    source: "SAE J402: three carbon digits; series 52 by a bar mill handbook",
  },
  {
    given: ["80CrV2"],
    gives: [
      ["C", 0.8, "…"],
      ["Cr", 0.5, "…"],
      ["V", "", "…"],
    ],
    source: "EN 10027-1: hundredths of a percent; Cr times 4; vanadium without a figure",
  },
  {
    given: ["60С2"],
    gives: [
      ["C", 0.6, "…"],
      ["Si", 2, "…"],
    ],
    source: "GOST 14959: hundredths of a percent, whole percents",
  },
];

export const DENSITY: readonly Example[] = [
  { given: ["1095"], gives: 7.872, source: "PNNL-15870 Rev. 2" },
  { given: ["D2"], gives: 7.7, source: "density that two suppliers print for D2" },
  { given: ["304"], gives: 8.03, source: "PNNL-15870 Rev. 2" },
  { given: ["1075"], gives: 7.85, source: "usual handbook figure for carbon steel, from memory" },
];

export const EVEN_OUT: readonly Example[] = [
  {
    given: [0.25, 1100],
    gives: 3.85,
    within: 0.01,
    source: "worked by hand with the diffusivity of Lee, Matlock and Van Tyne (2011): 8.87e-11 m²/s",
  },
];

export const NEAREST_GRADES: readonly Example[] = [
  {
    given: ["C 1.0 Mn 0.35 Si 0.25 Cr 1.45"],
    gives: [
      ["52100", "SAE/AISI", "C", -0.01],
      ["100Cr6", "EN", "C", -0.01],
      ["ШХ15", "GOST", "Mn", -0.05],
      ["GCr15", "GB", "Cr", 0.075],
      ["102Cr6", "EN", "C", 0.025],
      ["SUJ2", "JIS", "C", 0.025],
      ["51100", "SAE/AISI", "Cr", -0.425],
      ["L3", "AISI tool", "V", 0.2],
      ["5195", "SAE/AISI", "Cr", -0.65],
      ["GCr15SiMn", "GB", "Mn", 0.75],
    ],
    within: 1e-6,
    source:
      "middle of the standard's limits less the analysis: 52100 holds 0.93 to 1.05 % C, 0.99 - 1.00 = -0.01",
  },
];

export const STAINLESS: readonly Example[] = [
  {
    given: ["D2", 1020],
    gives: [12, 6.5, 8.198, "…"],
    within: 0.001,
    source:
      "equilibrium calculated for D2 at 1020 °C: 6.5 % Cr in austenite; PREN worked by hand: 6.5 + 3.3 × 0.95 × 6.5/12",
  },
];

export const STEEL: readonly Example[] = [
  {
    given: ["T30402"],
    gives: ["D2", "AISI tool", "ASTM A681", "T30402", "", "cold work", 1.4, 1.6, 11, 13, 7.7, "limits read"],
    source: "ASTM A681 limits and density as suppliers print them",
  },
  {
    given: ["T30402", "card"],
    gives: ["D2", "AISI tool", "ASTM A681", "T30402", "", "cold work", 1.4, 1.6, 11, 13, 7.7, "limits read"],
    source: "the same row; a card shows only where Excel has cards",
  },
  {
    given: [1.4116],
    gives: ["X50CrMoV15", "EN", "…", "", "1.4116", "martensitic stainless", 0.45, 0.55, 14, 15, 7.7, "…"],
    source: "EN 10088, as a compilation of grades prints it",
  },
  {
    given: ["420"],
    gives: ["420", "AISI stainless", "…", "S42000", "", "martensitic stainless", 0.15, "", 12, 14, 7.75, "…"],
    source: "SAE J405: carbon is a minimum only; density typical of the family",
  },
];

export const STEELS: readonly Example[] = [
  {
    given: ["martensitic stainless", "AISI", "440"],
    gives: [["440A"], ["440B"], ["440C"]],
    source: "SAE J405 lists three carbon classes of type 440",
  },
  {
    given: [null, "JIS", "SK5"],
    gives: [["SK85"]],
    source: "JIS G 4401: SK5 is the old symbol of SK85",
  },
];

export const STEEL_TRAITS: readonly Example[] = [
  {
    given: ["D2"],
    gives: ["cold work", 2, 8, 13, "…", "…", "lowest", "…", "slow to rust", "…", "…", "…"],
    within: 1,
    source:
      "handbook table of tool steels, from memory: D2 toughness 2, wear 8; 12 to 15 % of carbide by most authors",
  },
  {
    given: ["H13"],
    gives: ["hot work", 9, 3, 1.5, "…", "…", "very low", "…", "slow to rust", "…", "…", "…"],
    source: "handbook table of tool steels as a merchant prints it: H13 toughness 9, wear 3",
  },
  {
    given: ["5160"],
    gives: ["spring steel", 6, 3, 0, "…", "…", "medium", "…", "rusts", "…", "…", "…"],
    within: 1,
    source: "no carbide above Ac3 at 0.60 % C; rating worked by hand: 13.2 - 11.2 × 0.60 = 6.5",
  },
];

export const CLADDING: readonly Example[] = [
  {
    given: ["1095", "410", 1100, 10, 1.5],
    gives: [0.4, 0.4, 0.535, "…"],
    within: 0.006,
    source:
      "worked by hand: D at the mean 0.54 % C is 8.3e-11 m²/s, √(D t) 0.223 mm, a tenth of the step left at 1.81 of it; weld (0.95 + 0.12) / 2",
  },
];
