import type { Example } from "../declare";

export const VERSION: readonly Example[] = [
  { given: [], gives: "…", source: "the version in package.json and the edition of the data files" },
];

export const EVIDENCE: readonly Example[] = [
  {
    given: ["DENSITY", "1095"],
    gives: [["…", "…", "no numeric range", "…", "compiled", "…"]],
    source: "the density of 1095 is one published figure, so one relation stands behind it",
  },
];
