import type { Example } from "../declare";

export const HARDNESS: readonly Example[] = [
  { given: [700, "HV", "HRC"], gives: 60.1, source: "ISO 18265, table A.1" },
  { given: [700, "HV", "HRC", "hardened"], gives: 59.2, source: "ISO 18265, annex B" },
  { given: [700, "HV", "HRC", "cold work"], gives: 60.4, source: "ISO 18265, annex C" },
  { given: [700, "HV", "HRC", "high speed"], gives: 59.7, source: "ISO 18265, annex D" },
  { given: [400, "HV", "MPa"], gives: 1290, source: "ISO 18265, table A.1" },
  {
    given: [[[400], [450]], "HV", "HB"],
    gives: [[380], [428]],
    source: "ISO 18265, table A.1",
  },
];

export const READ_HARDNESS: readonly Example[] = [
  { given: ["58-60"], gives: [58, 59, 60], source: "as the text says" },
  { given: ["60 +-1"], gives: [59, 60, 61], source: "as the text says" },
  { given: ["59 HRC"], gives: [59, 59, 59], source: "as the text says" },
];

export const SCALES: readonly Example[] = [];

export const STRENGTH: readonly Example[] = [
  {
    given: [400, "HV"],
    gives: [1059.7, 1290],
    within: 0.1,
    source: "Pavlina and Van Tyne 2008: 2.876 HV - 90.7; ISO 18265, table A.1",
  },
];
