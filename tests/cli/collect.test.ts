import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { collect } from "../../src/cli/commands/collect";
import { share } from "../../src/cli/commands/share";
import { filledIn } from "../workbook/answers/fill";
import { planOfEight } from "../workbook/answers/plans";
import { storedValues } from "../workbook/template-cells";
import { outcome } from "./in-process";

// The run of eight lines out to a supplier and a customer, and home again; every name is invented.

const LONG = 300_000;
let folder = "";
const at = (name: string) => join(folder, name);

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "collect-"));
  writeFileSync(at("plan.xlsx"), await planOfEight());
}, LONG);
afterAll(() => rmSync(folder, { recursive: true }));

it(
  "writes nothing unasked, takes what is accepted by name, and nothing twice",
  async () => {
    const out = await outcome(share, [
      "--for",
      "supplier",
      "Old Quay Metals",
      "-o",
      at("out.xlsx"),
      at("plan.xlsx"),
    ]);
    // Of the eight lines three are bought there: 8 and 20 cells each.
    expect(out.stdout).toContain("Cells for an answer: 84 in 6 lines");
    const order = {
      "K6/S6": { Price: 9.9, "Price for": "kg", "Heat no.": "T6-1" },
      "K7/S7": { Price: 9.1, "Heat no.": "T7-1", "C %": 0.95, "Mn %": 0.4 },
      "K8/S8": { Price: "9,50", "Heat no.": "T8-1" },
    };
    const bytes = await filledIn(readFileSync(at("out.xlsx")), { "Answer to order": order }, { by: "desk" });
    writeFileSync(at("back.xlsx"), bytes);
    const before = readFileSync(at("plan.xlsx"));
    const shown = await outcome(collect, [at("plan.xlsx"), at("back.xlsx")]);
    expect(shown.stderr).toBe("");
    expect(shown.status).toBe(1);
    expect(shown.stdout).toContain("Cells out 84, answered 9; ");
    expect(shown.stdout).toContain("Nothing written: --accept takes all that are fine");
    expect(readFileSync(at("plan.xlsx")).equals(before)).toBe(true);
    const dry = await outcome(collect, ["--accept", "--dry-run", at("plan.xlsx"), at("back.xlsx")]);
    expect(dry.stdout).toContain("Nothing written: ");
    expect(readFileSync(at("plan.xlsx")).equals(before)).toBe(true);
    writeFileSync(at("other plan.xlsx"), "mine");
    const over = await outcome(collect, [
      "--accept",
      "-o",
      at("other plan.xlsx"),
      at("plan.xlsx"),
      at("back.xlsx"),
    ]);
    expect([over.status, over.stderr]).toEqual([2, expect.stringContaining("give --force to write over it")]);
    expect(readFileSync(at("other plan.xlsx"), "utf8")).toBe("mine");
    const done = await outcome(collect, [
      "--accept",
      "--date",
      "2026-11-29",
      at("plan.xlsx"),
      at("back.xlsx"),
    ]);
    expect(done.stdout).toMatch(/plan\.xlsx: \d answers taken/);
    const values = await storedValues(readFileSync(at("plan.xlsx")));
    expect(values.figure("Steel and heats", "S6", "Heat no.")).toBe("T6-1");
    expect(values.figure("Steel and heats", "S8", "Price a kg")).toBe(9.5);
    const again = await outcome(collect, ["--accept", at("plan.xlsx"), at("back.xlsx")]);
    expect(again.stdout).toContain("fine 0, ");
    expect(again.stdout).toContain("Nothing written");
  },
  LONG,
);

it(
  "refuses wrong arguments, each with a sentence",
  async () => {
    const said = async (...args: string[]) => {
      const { status, stderr } = await outcome(collect, args);
      expect(status).toBe(2);
      return stderr.split("\n")[0];
    };
    expect(await said(at("plan.xlsx"))).toContain("give the planning workbook and at least one answer");
    expect(await said("--only", "99", at("plan.xlsx"), at("back.xlsx"))).toContain('--only is "99"');
    expect(await said(at("back.xlsx"), at("back.xlsx"))).toContain("no planning workbook");
  },
  LONG,
);
