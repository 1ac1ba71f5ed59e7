import { describe, expect, test } from "vitest";
import { NotAvailable, Refusal } from "../../src/core/refusal";
import type { Cells } from "../../src/functions/cells";
import { rowFunction, scalarFunction, tableFunction } from "../../src/functions/declare";
import { evaluate } from "../../src/functions/evaluate";
import {
  number,
  optionalNumber,
  optionalSeries,
  rangeParameter,
  series,
  text,
} from "../../src/functions/parameters";

const grade = text({
  label: "steel",
  kind: "steel",
  help: "Grade.",
  accepts: "a grade",
  find: (given) => {
    if (String(given) === "unknown") throw new NotAvailable("no such grade");
    return String(given);
  },
});
const width = number({ label: "width", quantity: "length", unit: "mm", above: 0, max: 1000, help: "Width." });
const edge = optionalNumber({
  label: "edge",
  quantity: "length",
  unit: "mm",
  min: 0,
  fallback: 0.5,
  help: "Edge.",
});
const stock = { topic: "About", summary: "For this test.", relations: [] } as const;

const JOINED = scalarFunction({
  ...stock,
  name: "JOINED",
  parameters: { grade, width, edge },
  result: { label: "joined", unit: "text" },
  compute: ({ grade, width, edge }) => `${grade}|${width}|${edge}`,
});
const ROW = rowFunction({
  ...stock,
  name: "ROW",
  parameters: { grade, width },
  result: [
    { label: "doubled", unit: "mm" },
    { label: "note", unit: "text" },
  ],
  compute: ({ grade, width }) => [width * 2, `of ${grade}`],
});
const BLADE = rowFunction({
  ...stock,
  name: "SUMS",
  parameters: {
    x: series({ label: "x", quantity: "length", unit: "mm", min: 0, help: "Station." }),
    w: series({ label: "w", quantity: "length", unit: "mm", min: 0, help: "Width." }),
    e: optionalSeries({ label: "e", quantity: "length", unit: "mm", min: 0, fallback: 7, help: "Edge." }),
    grade,
  },
  result: [
    { label: "stations", unit: "" },
    { label: "sum", unit: "mm" },
    { label: "edges", unit: "text" },
  ],
  compute: ({ x, w, e, grade }) => [
    x.length,
    w.reduce((sum, value) => sum + value, 0),
    `${e.join(" ")} ${grade}`,
  ],
});
const PAIRS = tableFunction({
  ...stock,
  name: "PAIRS",
  parameters: { names: rangeParameter(grade), width },
  result: [{ label: "name", unit: "text" }],
  compute: ({ names, width }) => names.map((name) => [`${name ?? "-"} ${width}`]),
});

/** Cells with refusals written as "code sentence". */
function shown(cells: Cells) {
  return cells.map((row) =>
    row.map((cell) => (cell instanceof Refusal ? `${cell.code} ${cell.message}` : cell)),
  );
}

describe("scalar functions broadcast", () => {
  test("a single set of arguments", () => {
    expect(shown(evaluate(JOINED, ["a", 4]))).toEqual([["a|4|0.5"]]);
  });

  test("a column against a row gives a matrix, as a spreadsheet's operators do", () => {
    expect(shown(evaluate(JOINED, [[["a"], ["b"]], [[1, 2]], 0]))).toEqual([
      ["a|1|0", "a|2|0"],
      ["b|1|0", "b|2|0"],
    ]);
  });

  test("ranges of unequal length leave #N/A where there is no partner", () => {
    const cells = shown(
      evaluate(JOINED, [
        [["a"], ["b"], ["c"]],
        [[1], [2]],
      ]),
    );
    expect(cells[1]).toEqual(["b|2|0.5"]);
    expect(cells[2]?.[0]).toMatch(/^#N\/A the ranges given have different sizes/);
  });

  test("one bad row touches no other", () => {
    const cells = shown(
      evaluate(JOINED, [
        [["a"], ["unknown"], ["c"]],
        [[1], [2], [-3]],
      ]),
    );
    expect(cells[0]).toEqual(["a|1|0.5"]);
    expect(cells[1]).toEqual(["#N/A no such grade"]);
    expect(cells[2]?.[0]).toMatch(
      /^#VALUE! width: -3 mm given; give a length in mm, above 0 mm up to 1000 mm/,
    );
  });
});

describe("blanks", () => {
  test.each([[null], [""], [0], [undefined], ["  "]])("a blank (%s) row stays blank", (blank) => {
    expect(
      shown(
        evaluate(JOINED, [
          [["a"], [blank]],
          [[1], [blank]],
        ]),
      ),
    ).toEqual([["a|1|0.5"], [""]]);
  });

  test("a column with gaps beside a fixed argument stays blank in the gaps", () => {
    expect(shown(evaluate(JOINED, [[["a"], [null]], 5]))).toEqual([["a|5|0.5"], [""]]);
  });

  test("a blank steel beside a filled argument asks for quotes", () => {
    expect(shown(evaluate(JOINED, [null, 5]))[0]?.[0]).toMatch(
      /^#VALUE! steel is empty: put the grade in quotes or point at its cell/,
    );
  });

  test("a 0 that cannot be meant reads as empty, one that can stands", () => {
    expect(shown(evaluate(JOINED, ["a", 0]))[0]?.[0]).toMatch(/^#VALUE! width is empty: give a length in mm/);
    expect(shown(evaluate(JOINED, ["a", 1, 0]))).toEqual([["a|1|0"]]);
    expect(shown(evaluate(JOINED, ["a", 1, null]))).toEqual([["a|1|0.5"]]);
  });
});

describe("what a host may hand over", () => {
  test("errors in both forms spoil their own row", () => {
    const given = [["a"], ["b"], ["c"]];
    const widths = [
      [1],
      [{ type: "Error", basicValue: "#N/A", errorType: "NotAvailable" }],
      [{ code: "#DIV/0!" }],
    ];
    const cells = shown(evaluate(JOINED, [given, widths]));
    expect(cells[0]).toEqual(["a|1|0.5"]);
    expect(cells[1]?.[0]).toMatch(/^#N\/A the cell this reads from holds #N\/A/);
    expect(cells[2]?.[0]).toMatch(/^#VALUE! the cell this reads from holds #DIV\/0!/);
  });

  test("rich values give their plain value, entities their text", () => {
    const entity = { type: "Entity", text: "a", basicValue: "#VALUE!" };
    expect(shown(evaluate(JOINED, [entity, { type: "Double", basicValue: 2.5 }]))).toEqual([["a|2.5|0.5"]]);
  });

  test("a logical value is not a number", () => {
    expect(shown(evaluate(JOINED, ["a", true]))[0]?.[0]).toMatch(/^#VALUE! width: true is not a number/);
  });

  test("numbers typed as text, and dates that were fractions", () => {
    expect(shown(evaluate(JOINED, ["a", "1-1/4 in"]))).toEqual([["a|31.75|0.5"]]);
    expect(shown(evaluate(JOINED, ["a", 46097]))[0]?.[0]).toMatch(
      /looks like a date: type a fraction with its unit/,
    );
  });

  test("ragged ranges are filled up with blanks", () => {
    expect(shown(evaluate(JOINED, [[["a", "b"], ["c"]], 1]))).toEqual([
      ["a|1|0.5", "b|1|0.5"],
      ["c|1|0.5", ""],
    ]);
  });

  test("too many arguments", () => {
    expect(shown(evaluate(JOINED, ["a", 1, 2, 3]))[0]?.[0]).toMatch(
      /takes 3 arguments at most, 4 were given/,
    );
  });

  test("a fault of ours stays in its cell and is named", () => {
    const FAULTY = scalarFunction({
      ...stock,
      name: "FAULTY",
      parameters: { width },
      result: { label: "faulty", unit: "" },
      compute: ({ width }) => (width > 1 ? Number.NaN : 1),
    });
    const cells = shown(evaluate(FAULTY, [[[1], [2]]]));
    expect(cells[0]).toEqual([1]);
    expect(cells[1]?.[0]).toMatch(/^#VALUE! fault in the add-in/);
  });
});

describe("row functions", () => {
  test("a column of inputs gives a row each; figures carry the error, texts stay empty", () => {
    const cells = shown(
      evaluate(ROW, [
        [["a"], ["unknown"], [""]],
        [[1], [2], [null]],
      ]),
    );
    expect(cells).toEqual([
      [2, "of a"],
      ["#N/A no such grade", ""],
      ["", ""],
    ]);
  });

  test("a row of inputs is read as well; a matrix is refused", () => {
    expect(shown(evaluate(ROW, [[["a", "b"]], 2]))).toEqual([
      [4, "of a"],
      [4, "of b"],
    ]);
    expect(
      shown(
        evaluate(ROW, [
          [
            ["a", "b"],
            ["c", "d"],
          ],
          2,
        ]),
      )[0]?.[0],
    ).toMatch(/^#VALUE! steel: give one column/);
  });
});

describe("stations", () => {
  test("a column is one blade, and spare cells below it do not count", () => {
    expect(shown(evaluate(BLADE, [[[0], [5], [null]], [[3], [4], [null]], 1, "a"]))).toEqual([
      [2, 7, "1 1 a"],
    ]);
  });

  test("a matrix is a blade a row; a row beside it is shared, a column is one value a blade", () => {
    const cells = shown(
      evaluate(BLADE, [
        [[0, 5, 9]],
        [
          [1, 2, 3],
          [4, 5, ""],
        ],
        [[7], [8]],
        [["a"], ["b"]],
      ]),
    );
    expect(cells[0]).toEqual([3, 6, "7 7 7 a"]);
    expect(cells[1]?.[0]).toMatch(/^#VALUE! station 3: w is empty/);
  });
});

describe("tables", () => {
  test("a whole range keeps its gaps", () => {
    expect(shown(evaluate(PAIRS, [[["a"], [null], ["b"]], 3]))).toEqual([["a 3"], ["- 3"], ["b 3"]]);
  });

  test("one refusal in a range refuses the table; a list where one cell is wanted is refused", () => {
    expect(shown(evaluate(PAIRS, [[["a"], ["unknown"]], 3]))).toEqual([["#N/A no such grade"]]);
    expect(shown(evaluate(PAIRS, ["a", [[1], [2]]]))[0]?.[0]).toMatch(
      /answers with a table, so give one cell, not 2/,
    );
  });

  test("nothing filled in gives nothing", () => {
    expect(shown(evaluate(PAIRS, [null, null]))).toEqual([[""]]);
  });
});

describe("long columns", () => {
  test("a column as long as a worksheet is answered", () => {
    const rows = 1_048_576;
    const cells = evaluate(JOINED, ["a", Array.from({ length: rows }, () => [4])]);
    expect(cells.length).toBe(rows);
    expect(cells.at(-1)).toEqual(["a|4|0.5"]);
  });
});
