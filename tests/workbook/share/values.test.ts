import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import {
  digestOf,
  plainContent,
  type Values,
  valuesOf,
  valuesOfSheets,
  withFigures,
} from "../../../src/workbook/share/values";
import { agree, differingCells } from "../../../src/workbook/share/verify/agreement";
import { data, figure, live, row, text } from "./live";
import { paper } from "./paper-cells";

const hash = (...lines: readonly unknown[]) =>
  createHash("sha256")
    .update(lines.map((line) => JSON.stringify(line)).join("\n"))
    .digest("hex");

const values = (
  sheets: Readonly<Record<string, Readonly<Record<string, string | number | boolean>>>>,
): Values =>
  new Map(
    Object.entries(sheets).map(([name, cells]) => [
      name,
      new Map(Object.entries(cells).map(([cell, value]) => [cell, { value }])),
    ]),
  );

describe("the values of a file", () => {
  it("are its filled cells by address; an empty text is none", () => {
    const book = live({
      sheets: {
        Plan: data(
          row(
            1,
            text("A1", "1095"),
            figure("B1", 0.95),
            text("C1", ""),
            '<c r="D1"/>',
            '<c r="E1" t="b"><v>1</v></c>',
          ),
          row(2, '<c r="A2" t="e"><v>#N/A</v></c>', figure("B2", 0)),
        ),
      },
    });
    expect([...(valuesOf(book).get("Plan") ?? [])]).toEqual([
      ["A1", { value: "1095" }],
      ["B1", { value: 0.95 }],
      ["E1", { value: true }],
      ["A2", { error: "#N/A" }],
      ["B2", { value: 0 }],
    ]);
  });

  it("of sheets made here are their constants", () => {
    const sheet = paper("Order", [["steel", 3]]);
    const more = [
      { row: 2, column: 0 },
      { row: 3, column: 1, content: { formula: "=1+1" } },
    ];
    expect(valuesOfSheets([{ ...sheet, cells: [...sheet.cells, ...more] }])).toEqual(
      values({ Order: { A1: "steel", B1: 3 } }),
    );
  });

  it("count by twelve figures, and are told in words that do not depend on the program", () => {
    expect(withFigures(0.1 + 0.2)).toBe(0.3);
    expect(withFigures(1234.567890123456)).toBe(1234.56789012);
    const contents = [
      undefined,
      { error: "#N/A" },
      { value: 1 / 3 },
      { value: true },
      { value: false },
      { value: "true" },
    ];
    expect(contents.map((content) => plainContent(content as never))).toEqual([
      "",
      "#N/A",
      "0.333333333333",
      "TRUE",
      "FALSE",
      "true",
    ]);
  });
});

describe("the SHA-256 of values", () => {
  it("goes over sheets by name and cells by place, whatever their order in the file", async () => {
    const expected = hash(
      ["A", "A1", "string", "x"],
      ["A", "B2", "number", "2"],
      ["B", "B1", "boolean", "TRUE"],
      ["B", "A2", "number", "0.1"],
      ["B", "AA2", "number", "7"],
    );
    expect(await digestOf(values({ B: { AA2: 7, A2: 0.1, B1: true }, A: { B2: 2, A1: "x" } }))).toBe(
      expected,
    );
    expect(await digestOf(values({ A: { A1: "x", B2: 2 }, B: { B1: true, A2: 0.1 + 1e-17, AA2: 7 } }))).toBe(
      expected,
    );
    expect(await digestOf(values({ A: { A1: "x", B2: 2 }, B: { B1: true, A2: 0.1, AA2: "7" } }))).not.toBe(
      expected,
    );
  });

  it("tells an error from the text of it, and leaves out what it is told to", async () => {
    const error: Values = new Map([["A", new Map([["A1", { error: "#N/A" } as const]])]]);
    expect(await digestOf(error)).toBe(hash(["A", "A1", "error", "#N/A"]));
    const all = values({ A: { A1: "x", B1: "seal" }, B: { B1: "stays" } });
    expect(await digestOf(all, (sheet, cell) => sheet === "A" && cell === "B1")).toBe(
      hash(["A", "A1", "string", "x"], ["B", "B1", "string", "stays"]),
    );
    expect(await digestOf(values({ A: {} }))).toBe(hash());
  });

  it("goes over what a table of answers tells by the keys of its rows, and not over the answers", async () => {
    const table = (name: string, price: number | string, rows: readonly (readonly [string, string])[]) => {
      const cells: Record<string, string | number> = { A4: "Key", B4: "Line", C4: "Grade", D4: "Price" };
      rows.forEach(([key, line], at) => {
        Object.assign(cells, {
          [`A${at + 5}`]: key,
          [`B${at + 5}`]: line,
          [`C${at + 5}`]: "1095",
          [`D${at + 5}`]: price,
        });
      });
      return values({ [name]: cells, Paper: { A1: "x" } });
    };
    const rows = [
      ["E-AAAABBBB/L1", "L1"],
      ["E-AAAABBBB/L2", "L2"],
    ] as const;
    const made = await digestOf(table("Answer to enquiry", "", rows));
    // Sorted, renamed and filled in, it tells the same; told otherwise, it does not.
    expect(await digestOf(table("Antwort", 9.1, [...rows].reverse()))).toBe(made);
    const other = [["E-AAAABBBB/L1", "L9"], rows[1] ?? ["", ""]] as const;
    expect(await digestOf(table("Answer to enquiry", "", other))).not.toBe(made);
    expect(await digestOf(table("Answer to enquiry", "", rows.slice(1)))).not.toBe(made);
  });
});

describe("two contents agree", () => {
  it("where numbers lie within the tolerance of the larger, at the least of 1, and anything else is the same", () => {
    const near = (a: unknown, b: unknown, tolerance = 0.01) => agree(a as never, b as never, tolerance);
    expect([near({ value: 100 }, { value: 101 }), near({ value: 100 }, { value: 101.02 })]).toEqual([
      true,
      false,
    ]);
    expect([near({ value: 0.1 }, { value: 0.11 }), near({ value: 0.1 }, { value: 0.12 })]).toEqual([
      true,
      false,
    ]);
    expect([near({ value: -101 }, { value: -100 }), near({ value: 1 }, { value: -1 })]).toEqual([
      true,
      false,
    ]);
    expect([near({ value: "a" }, { value: "a" }), near({ value: "a" }, { value: "A" })]).toEqual([
      true,
      false,
    ]);
    expect([near({ value: 1 }, { value: "1" }), near({ value: true }, { value: "TRUE" })]).toEqual([
      false,
      false,
    ]);
    expect([near({ error: "#N/A" }, { error: "#N/A" }), near({ error: "#N/A" }, { error: "#REF!" })]).toEqual(
      [true, false],
    );
    expect([
      near(undefined, undefined),
      near(undefined, { value: 0 }),
      near(undefined, { value: "" }),
    ]).toEqual([true, false, false]);
  });

  it("on the sheets that both have, cell by cell", () => {
    const [ours, theirs] = [
      values({ A: { A1: 1, B1: 2 }, B: { A1: 1 } }),
      values({ A: { B1: 3, C1: 4 }, C: { A1: 9 } }),
    ];
    expect(differingCells(ours, theirs, 0)).toEqual([
      { sheet: "A", cell: "A1", live: { value: 1 }, shared: undefined },
      { sheet: "A", cell: "B1", live: { value: 2 }, shared: { value: 3 } },
      { sheet: "A", cell: "C1", live: undefined, shared: { value: 4 } },
    ]);
  });
});
