import { defineConfig } from "vitest/config";

/** Tests of the parts that are changed on purpose, and no others: each of them runs once a fault. */
const TESTS: Readonly<Record<string, readonly string[]>> = {
  tempering: ["tests/tempering/**/*.test.ts", "tests/published.test.ts"],
  quench: [
    "tests/hardening/**/*.test.ts",
    "tests/section/{jominy,functions}.test.ts",
    "tests/heat/*.test.ts",
    "tests/published.test.ts",
  ],
  section: ["tests/section/**/*.test.ts"],
  shape: ["tests/shape/**/*.test.ts", "tests/balance/**/*.test.ts", "tests/published.test.ts"],
  run: ["tests/run/**/*.test.ts"],
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
