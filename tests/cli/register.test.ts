import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { recalc, watch } from "../../src/cli/commands/recalc";
import { share } from "../../src/cli/commands/share";
import { verify } from "../../src/cli/commands/verify";
import { patchWorkbook } from "../../src/workbook/file/patch/patch-workbook";
import { readLiveWorkbook } from "../../src/workbook/file/read/live-workbook";
import { planR07 } from "../workbook/answers/plans";
import { handMade } from "../workbook/hand-made";
import { storedValues } from "../workbook/template-cells";
import { outcome } from "./in-process";

const LONG = 240_000;
let folder = "";
let plan = "";

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "register-"));
  plan = join(folder, "plan.xlsx");
  writeFileSync(plan, await planR07());
}, LONG);
afterAll(() => rmSync(folder, { recursive: true }));

const bytesOf = (file: string) => new Uint8Array(readFileSync(file));
const rowsOf = async () =>
  (await storedValues(bytesOf(plan)))
    .rows("Register")
    .slice(4)
    .filter(([number]) => number);

it(
  "notes every copy in the plan's register, one under the other, and a copy still verifies",
  async () => {
    const copies = ["one.xlsx", "two.xlsx"].map((name) => join(folder, name));
    for (const copy of copies)
      await outcome(share, [
        "--for",
        "supplier",
        "--date",
        "2026-11-29",
        "--by",
        "2026-12-04",
        "-o",
        copy,
        plan,
      ]);
    const rows = await rowsOf();
    expect(rows.map((row) => row.slice(0, 3))).toEqual([
      [1, "2026-11-29", "Steel supplier"],
      [2, "2026-11-29", "Steel supplier"],
    ]);
    expect(rows[0]?.[3]).toMatch(/^Steel enquiry, Steel order/);
    expect(rows[0]?.slice(4, 6)).toEqual(["R-07 B", "one.xlsx"]);
    expect(rows[0]?.[8]).toMatch(/^[0-9a-f]{64}$/);
    const verified = await outcome(verify, [plan, copies[0] ?? ""]);
    expect(verified.stdout).toMatch(/State: as it was made\n(.*\n)*SHA-256: as stated/);
    expect(verified.status).toBe(0);
  },
  LONG,
);

it(
  "leaves the plan alone where that is asked, and tells of a plan that is open elsewhere",
  async () => {
    const before = bytesOf(plan);
    await outcome(share, ["--no-register", "--for", "customer", "-o", join(folder, "three.xlsx"), plan]);
    expect(bytesOf(plan)).toEqual(before);
    writeFileSync(join(folder, ".~lock.plan.xlsx#"), "");
    const open = await outcome(share, ["--for", "customer", "-o", join(folder, "four.xlsx"), plan]);
    rmSync(join(folder, ".~lock.plan.xlsx#"));
    expect(open.stderr).toMatch(/not noted in the register of the plan: The workbook is open/);
    expect(bytesOf(plan)).toEqual(before);
  },
  LONG,
);

it(
  "calculates a file whenever it is saved elsewhere, until it is called off",
  async () => {
    const file = join(folder, "watched.xlsx");
    const sheet = (value: number) =>
      handMade({
        sheets: {
          Plan: `<sheetData><row r="1"><c r="A1"><v>${value}</v></c><c r="B1"><f>A1*3</f></c></row></sheetData>`,
        },
      });
    writeFileSync(file, sheet(2));
    const end = new AbortController();
    const said: string[] = [];
    const terminal = {
      input: async () => "",
      write: (words: string) => void said.push(words),
      complain: (words: string) => void said.push(words),
    };
    const ends = watch(file, undefined, terminal, end.signal);
    const shows = async (wanted: string) => {
      await expect
        .poll(() => readLiveWorkbook(bytesOf(file)).sheets[0]?.stored.rows[0]?.cells[1]?.raw, {
          timeout: 30_000,
        })
        .toBe(wanted);
    };
    await shows("6");
    await expect.poll(() => said.join("")).toContain("Watching");
    writeFileSync(file, sheet(5));
    await shows("15");
    writeFileSync(file, "no workbook");
    await expect.poll(() => said.join(""), { timeout: 30_000 }).toMatch(/recalc: /);
    writeFileSync(file, (await patchWorkbook(sheet(1), new Map())).bytes);
    writeFileSync(file, sheet(7));
    await shows("21");
    end.abort();
    expect(await ends).toBe(0);
    const both = await outcome(recalc, ["--watch", "--check", file]);
    expect(both.status).toBe(2);
  },
  LONG,
);
