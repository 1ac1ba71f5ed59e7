import { defineConfig } from "vitest/config";

/** Tests of what the build makes; they wait for it, the others do not. */
const OF_PAGES = [
  "tests/host/**/*.test.ts",
  "tests/pane/**/*.test.ts",
  "tests/manifest/**/*.test.ts",
  "tests/security/pages.test.ts",
  "tests/robustness/same-everywhere.test.ts",
];

export default defineConfig({
  test: {
    root: new URL("..", import.meta.url).pathname,
    testTimeout: 30_000,
    setupFiles: ["tests/seed.ts"],
    projects: [
      { extends: true, test: { name: "sources", include: ["tests/**/*.test.ts"], exclude: OF_PAGES } },
      { extends: true, test: { name: "pages", include: OF_PAGES, globalSetup: "tests/setup.ts" } },
    ],
  },
});
