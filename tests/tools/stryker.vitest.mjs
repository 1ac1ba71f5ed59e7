import { defineConfig } from "vitest/config";
import { TESTS } from "./mutation-tests.mjs";

const part = process.env.MUTATE ?? "";

export default defineConfig({
  test: {
    root: new URL("../..", import.meta.url).pathname,
    testTimeout: 30_000,
    setupFiles: ["tests/seed.ts"],
    include: part === "" ? Object.values(TESTS).flat() : TESTS[part],
    silent: true,
  },
});
