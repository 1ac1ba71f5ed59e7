import { defineConfig } from "vitest/config";

/** Tests of the parts that are changed on purpose, and no others: each of them runs once a fault. */
const TESTS: Readonly<Record<string, readonly string[]>> = {
  tempering: ["tests/tempering/**/*.test.ts", "tests/published.test.ts"],
  quench: ["tests/hardening/**/*.test.ts", "tests/run/{heat,loads}.test.ts", "tests/published.test.ts"],
  section: ["tests/hardening/section*.test.ts"],
  shape: ["tests/shape/**/*.test.ts", "tests/published.test.ts"],
  run: ["tests/run/**/*.test.ts"],
  hardness: ["tests/hardness/**/*.test.ts"],
  steel: ["tests/steel/**/*.test.ts"],
  share: ["tests/workbook/{share*,markers,csv,kept*,verify*,signed*,shown*}.test.ts"],
};

const part = process.env.MUTATE ?? "";
const include = part === "" ? Object.values(TESTS).flat() : [...(TESTS[part] ?? [])];

export default defineConfig({
  test: {
    root: new URL("../..", import.meta.url).pathname,
    testTimeout: 30_000,
    setupFiles: ["tests/seed.ts"],
    include,
    silent: true,
  },
});
