import type { Example } from "../declare";

const COMMON = "common practice, no source";

export const ASSESS: readonly Example[] = [
  {
    given: ["Heavy cutting sword hard targets", "5160", 56],
    gives: ["too hard", 0, "…", "…"],
    source: `${COMMON}: 53 to 54 at most`,
  },
  {
    given: ["Light sharp sword soft targets", "5160", 55],
    gives: ["inside", 0.95, "…", "…"],
    source: `${COMMON}: a sword around 55 is near the usual region`,
  },
  {
    given: ["Chef knife thin hard", "52100", 62, 65],
    gives: ["likely inside", 0.68, "…", "…"],
    source: "a range that straddles the upper end for high-carbon steel, 64",
  },
];

export const BAND_TEMPER: readonly Example[] = [
  {
    given: ["Chef knife thin hard", "1095"],
    gives: [203, 397, 59, 62, 64, 0.78, "…"],
    source: `${COMMON}: a thin kitchen knife of high-carbon steel 60 to 64 HRC`,
  },
];

export const BAND: readonly Example[] = [
  {
    given: ["Heavy cutting sword hard targets"],
    gives: [50, 52, 53, "whole", 22, 28, 0.8, 1.5, "…", "…"],
    source: COMMON,
  },
  {
    given: ["Chef knife thin hard"],
    gives: [59, 60, 62, "edge", 10, 15, 0.1, 0.25, "…", "…"],
    source: `${COMMON}; one maker's page gives 58 to 62`,
  },
  {
    given: ["Hunting or skinning", "D2"],
    gives: [57, 59, 61, "whole", 15, 20, 0.25, 0.5, "…", "…"],
    source: `${COMMON}: D2 and O1 hunting knives to 61`,
  },
  {
    given: ["Chef knife thin hard", "X50CrMoV15"],
    gives: [56, 58, 60, "edge", 10, 15, 0.1, 0.25, "…", "…"],
    source: "two makers' pages: 58 to 62, and no more than 57 to 58 in ordinary stainless",
  },
  {
    given: ["Practice longsword blunt"],
    gives: [46, 49, 52, "whole", "", "", 1, 2, "…", "…"],
    source: "three sellers' pages: 48 at least, 50 to 52 as good",
  },
];

export const USES: readonly Example[] = [
  {
    given: ["axe"],
    gives: [["Felling axe bit"], ["Hatchet bit"], ["Carving or side axe bit"], ["Splitting maul edge"]],
    source: "the four axes among the 37 uses of the table",
  },
];

export const STEELS_FOR: readonly Example[] = [
  {
    given: [
      "Heavy cutting sword hard targets",
      6,
      "fast oil",
      800,
      null,
      ["D2", "X50CrMoV15", "5160", "1095"],
      [14, 9, 4, 5],
    ],
    gives: [
      ["5160", "uncertain", 376, 51, 0.55, 22, 6, 3, "rusts", "forge or kiln", 4, "…", "…"],
      ["1095", "ruled out", "", "", "", "", 3, 3, "rusts", "forge or kiln", 5, "…", ""],
      [
        "X50CrMoV15",
        "ruled out",
        "",
        "",
        "",
        "",
        7,
        4,
        "stainless",
        "kiln above 900 °C (1652 °F)",
        9,
        "…",
        "",
      ],
      ["D2", "ruled out", "", "", "", "", 2, 8, "slow to rust", "kiln above 900 °C (1652 °F)", 14, "…", ""],
    ],
    source: `${COMMON}: spring steel for a sword; no stainless, no D2, and 1095 only with a soft body`,
  },
];

export const TRADE_OFF: readonly Example[] = [
  {
    given: ["European sword sharp", "5160", [52, 50, 30]],
    gives: [
      [52, 359, 0.7, 1607, 33.2, "", "…"],
      [50, 392, 0.48, 1520, 31.4, "", "…"],
      [30, "", "", "", "", "", "no temper of this steel leads there"],
    ],
    within: 1,
    source: "edge load worked by hand: 1607 × 0.1 × tan² 21.5° / 0.75 = 33.2",
  },
];
