import { describe, expect, test } from "vitest";
import { NotAvailable, Refusal } from "../../src/core/refusal";
import { tableFunction } from "../../src/functions/declare";
import { evaluate } from "../../src/functions/evaluate";
import { numberOrNothing, table } from "../../src/functions/parameters";

const SHELF = tableFunction({
  name: "SHELF",
  summary: "For this test.",
  relations: [],
  parameters: {
    lines: table({ label: "lines", help: "Table.", accepts: "a table with headings" }),
    add: numberOrNothing({ label: "add", quantity: "number", unit: "", help: "Added." }),
  },
  result: [{ label: "cell", unit: "" }],
  compute: ({ lines, add = 0 }) =>
    lines.map((row) =>
      row.map((cell) => {
        if (cell === "none") return new NotAvailable("no shelf of that name");
        return typeof cell === "number" ? cell + add : (cell ?? "empty");
      }),
    ),
});

function shown(raw: readonly unknown[]) {
  return evaluate(SHELF, raw).map((row) =>
    row.map((cell) => (cell instanceof Refusal ? `${cell.code} ${cell.message}` : cell)),
  );
}

// The rules under test are those of the argument itself: rows kept, blanks told apart, one fault one cell.
describe("a table argument", () => {
  test("arrives as rows of cells, empty cells as null", () => {
    const range = [
      ["oak", 1, null],
      ["", 2, "ash"],
    ];
    expect(shown([range, 10])).toEqual([
      ["oak", 11, "empty"],
      ["empty", 12, "ash"],
    ]);
  });

  test("keeps a 0, which may be meant", () => {
    expect(shown([[["oak", 0]]])).toEqual([["oak", 0]]);
  });

  test("leaves an error in its own cell, with its sentence", () => {
    const range = [["oak", { type: "Error", basicValue: "#DIV/0!" }, 3]];
    const [row = []] = shown([range]);
    expect(row[0]).toBe("oak");
    expect(row[1]).toMatch(/^#VALUE! the cell this reads from holds #DIV\/0!/);
    expect(row[2]).toBe(3);
  });

  test("lets one cell of the answer hold a refusal", () => {
    expect(shown([[["none", 3]]])).toEqual([["#N/A no shelf of that name", 3]]);
  });

  test("stays empty while the sheet is", () => {
    expect(shown([[[null, ""]]])).toEqual([[""]]);
  });

  test("fills a ragged range up with empty cells", () => {
    expect(shown([[[1, 2], [3]]])).toEqual([
      [1, 2],
      [3, "empty"],
    ]);
  });
});
