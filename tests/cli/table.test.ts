import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { calc as command } from "../../src/cli/commands/calc";
import { readTable } from "../../src/cli/table-file";
import { outcome } from "./in-process";

// Starts: 24 good at 0.92 and 12 at 0.95, 90 % sure, are 28 and 14 by the binomial distribution (any statistics library).
// The rest is the contract of the command.

const folder = mkdtempSync(join(tmpdir(), "blade-metallurgy-table-"));

function file(name: string, content: string | Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

const calc = (...args: string[]) => outcome(command, args);

afterAll(() => rmSync(folder, { recursive: true, force: true }));

const CSV = 'good,steel,yield,own note\n24,52100,0.92,=cmd\n40,nosuch,0.95,"a, b"\n12,1075,"0,95",\n';

const WORDS = 'good,steel,yield,note\n24,52100,0.92,"Küchenmesser, trempé"\n';

describe("a run from a table file", () => {
  it("is planned line by line from a CSV, a fault in one line leaving the others", async () => {
    const { status, stdout } = await calc("--table", file("run.csv", CSV), "=BLADE.RUN_PLAN(TABLE)");
    const rows = stdout
      .trimEnd()
      .split("\n")
      .map((line) => JSON.parse(line) as unknown[]);
    const starts = rows[0]?.indexOf("starts") ?? -1;
    expect(rows.map((row) => row[starts])).toEqual([
      "starts",
      28,
      expect.objectContaining({ error: "#N/A" }),
      14,
    ]);
    expect(rows.map((row) => row[1])).toEqual(["own note", "=cmd", "a, b", ""]);
    const bad = rows[2] as { error: string; message?: string }[];
    // The sentence belongs to the line, so it is printed once.
    expect(bad.filter(({ message }) => message?.includes('"nosuch"'))).toHaveLength(1);
    expect(status).toBe(1);
  });

  it("is the same from JSON, rows as lists or as objects", async () => {
    const lists = file("lists.json", '[["good","steel","yield"],[24,"52100",0.92]]');
    const objects = file("objects.json", '[{"good":24,"steel":"52100","yield":0.92}]');
    const formula = "=BLADE.RUN_PLAN(TABLE)";
    const answer = await calc("--table", lists, formula);
    expect(answer.status).toBe(0);
    expect(answer.stdout).toContain(",28,");
    expect((await calc("--table", objects, formula)).stdout).toBe(answer.stdout);
  });

  // Byte-order marks: Unicode 16.0, 23.8; é and ü are E9 and FC in ISO 8859-1, and no UTF-8 by themselves.
  it.each([
    ["UTF-16, low byte first", Buffer.from(`\uFEFF${WORDS}`, "utf16le")],
    ["UTF-16, high byte first", Buffer.from(`\uFEFF${WORDS}`, "utf16le").swap16()],
    ["Latin-1", Buffer.from(WORDS, "latin1")],
    ["UTF-8 with its mark", Buffer.from(`\uFEFF${WORDS}`, "utf8")],
  ])("is read in %s", async (_, bytes) => {
    const { stdout } = await calc("--table", file("letters.csv", bytes), "=BLADE.RUN_PLAN(TABLE)");
    const row = JSON.parse(stdout.trimEnd().split("\n")[1] ?? "[]") as unknown[];
    expect(row).toContain("Küchenmesser, trempé");
    expect(row).toContain(28);
  });

  it("answers in JSON too", async () => {
    const { stdout } = await calc("--json", "--table", file("run.csv", CSV), "=ROWS(TABLE)");
    expect(JSON.parse(stdout)).toEqual({ formula: "=ROWS(TABLE)", value: 4 });
  });
});

describe("what is refused, on standard error and with exit 2", () => {
  it.each([
    ["a missing file", ["--table", "none.csv", "=1"], "calc: none.csv: there is no such file.\n"],
    [
      "another kind of file",
      ["--table", "run.ods", "=1"],
      "calc: run.ods: give a .csv, a .json or an .xlsx file\n",
    ],
  ])("%s", async (_, args, sentence) => {
    expect(await calc(...args)).toEqual({ status: 2, stdout: "", stderr: sentence });
  });

  it("a table without its file, or beside formulas from standard input", async () => {
    expect((await calc("--table")).stderr).toContain("--table wants the name of a file");
    expect((await calc("--json", "--table", "run.csv", "-")).stderr).toContain(
      "--table goes with one formula",
    );
  });
});

describe("reading", () => {
  it.each([
    ["empty.csv", "", /holds no rows/],
    ["broken.json", "[1,", /not JSON/],
    ["one.json", '{"good":1}', /give a list of rows/],
    ["mixed.json", '[[1],{"a":1}]', /every row as a list, or every row as an object/],
    ["deep.json", "[[[1]]]", /a cell holds a list/],
    ["open.csv", 'a,b\n"x,1\n', /row 2: .*quote/i],
  ])("%s is refused with a sentence", (name, content, sentence) => {
    expect(() => readTable(file(name, content))).toThrow(sentence);
  });

  it("numbers are numbers, texts stay texts, semicolons part cells where commas are decimal", () => {
    const path = file("semi.csv", "\uFEFFsteel;yield;note\n1095;0,92;'x\n=2+3;1e3;\n");
    const value = (held: number | string) => ({ value: held });
    expect(readTable(path)).toEqual([
      ["steel", "yield", "note"].map(value),
      [1095, "0,92", "'x"].map(value),
      [value("=2+3"), value(1000), undefined],
    ]);
  });
});
