/** Tests of the parts that are changed on purpose, and no others: each of them runs once a fault. */
export const TESTS = {
  tempering: ["tests/tempering/**/*.test.ts", "tests/published.test.ts"],
  quench: ["tests/hardening/**/*.test.ts", "tests/run/{heat,loads}.test.ts", "tests/published.test.ts"],
  section: ["tests/hardening/section*.test.ts"],
  shape: ["tests/shape/**/*.test.ts", "tests/published.test.ts"],
  run: ["tests/run/**/*.test.ts"],
  hardness: ["tests/hardness/**/*.test.ts"],
  steel: ["tests/steel/**/*.test.ts"],
  share: [
    "tests/workbook/alterations.test.ts",
    "tests/workbook/csv.test.ts",
    "tests/workbook/markers.test.ts",
    "tests/workbook/share.test.ts",
    "tests/workbook/verify.test.ts",
  ],
};
