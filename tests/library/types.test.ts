import { expect, test } from "vitest";
import { readEntries, unshownTypes } from "./public-types";

const [core, functions] = readEntries(["src/core/index.ts", "src/functions/index.ts"]);

test("core shows every type that what it shows refers to, so that a program can name it", () => {
  expect(core && unshownTypes(core, "src/core")).toEqual([]);
});

test("so do the worksheet functions", () => {
  expect(functions && unshownTypes(functions, "src/functions")).toEqual([]);
});
