import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { EXCEPTIONS, isAccepted, licensed, refusedLicences } from "../tools/licence-list";

describe("licences of all that is installed", () => {
  test("every package has one that is accepted, or a reason", () => {
    expect(licensed().length).toBeGreaterThan(500);
    expect(refusedLicences()).toEqual([]);
  });

  test("every exception is needed", () => {
    const needed = licensed().filter(({ licence }) => !isAccepted(licence));
    expect(Object.keys(EXCEPTIONS).filter((name) => !needed.some((one) => one.name === name))).toEqual([]);
  });

  test("the one that names none carries the Apache licence as a file", () => {
    expect(readFileSync("node_modules/@univerjs/telemetry/LICENSE", "utf8")).toContain("Apache License");
  });

  test.each([
    ["GPL-3.0", false],
    ["MIT OR GPL-2.0", true],
    ["(MIT AND GPL-2.0)", false],
    ["(BSD-3-Clause OR GPL-2.0)", true],
    ["", false],
  ])("%s: %s", (licence, accepted) => {
    expect(isAccepted(licence)).toBe(accepted);
    expect(refusedLicences([{ name: "a", version: "1.0.0", licence }])).toHaveLength(accepted ? 0 : 1);
  });
});
