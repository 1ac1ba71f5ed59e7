import { beforeAll, describe, expect, it } from "vitest";
import type { WorkbookModel } from "../../src/workbook/model/sheet-model";
import { FIRST_ROW, HEADINGS } from "../../src/workbook/sheets/parts/table-sheet";
import { planningFile } from "../../src/workbook/sheets/planning-file";
import { planningTemplate } from "../../src/workbook/sheets/planning-template";
import { eightLines } from "./eight-lines";
import { type StoredValues, storedValues } from "./template-cells";

const LONG = 300_000;

type Typed = readonly [sheet: string, row: number, heading: string, content: number | string];

/** A plan with cells typed into it: the row of the table counted from 0, the heading above. */
function typedInto(model: WorkbookModel, typed: readonly Typed[]): WorkbookModel {
  const sheets = model.sheets.map((sheet) => {
    const own = typed.filter(([name]) => name === sheet.name);
    const columns = sheet.rows[HEADINGS]?.map((cell) => cell?.content) ?? [];
    const rows = sheet.rows.map((cells, place) =>
      cells.map((cell, column) => {
        const found = own.find(
          ([, row, heading]) => row === place - FIRST_ROW && heading === columns[column],
        );
        return found === undefined || cell === undefined ? cell : { ...cell, content: found[3] };
      }),
    );
    return { ...sheet, rows };
  });
  return { ...model, sheets };
}

// K2 (52100) is parted over two batches and comes back in two lots; K3 (1075) is cut from a second heat of its steel,
// and K4 becomes a 1075 line too, cut from the same bars in the rack as K3 was before.
const TYPED: readonly Typed[] = [
  ["Steel and heats", 8, "Steel", "S9"],
  ["Steel and heats", 8, "Grade", "1075"],
  ["Steel and heats", 8, "Heat no.", "H-200"],
  ["Steel and heats", 8, "Width mm", 62],
  ["Steel and heats", 8, "Thickness mm", 24],
  ["Steel and heats", 8, "In the rack kg", 60],
  ["Lines", 3, "Steel", "1075"],
  ["Cut list", 2, "Steel in stock", "S9"],
  ["Cut list", 3, "Steel in stock", "S9"],
  ["Heat batches", 1, "Pieces", 20],
  ["Heat batches", 8, "Batch", "B9"],
  ["Heat batches", 8, "Where", "in-house"],
  ["Heat batches", 8, "Line", "K2"],
  ["Heat batches", 9, "Batch", "B3"],
  ["Heat batches", 9, "Where", "in-house"],
  ["Heat batches", 9, "Line", "K1"],
  ["Lots received", 1, "Pieces back", 11],
  ["Lots received", 1, "Treatment lot no.", "A-1"],
  ["Lots received", 10, "Batch", "B2"],
  ["Lots received", 10, "Line", "K2"],
  ["Lots received", 10, "Pieces back", 8],
  ["Lots received", 10, "Treatment lot no.", "A-2"],
  ...[62, 62.4, 58].flatMap((hrc, row): Typed[] => [
    ["Hardness readings", row, "Blade no.", `T-08-K2-0${row + 1}`],
    ["Hardness readings", row, "Line", "K2"],
    ["Hardness readings", row, "Batch", "B2"],
    ["Hardness readings", row, "Of lot no.", row < 2 ? "A-1" : "A-2"],
    ["Hardness readings", row, "1st", hrc],
  ]),
];

let values: StoredValues;
let plain: StoredValues;

beforeAll(async () => {
  const model = planningTemplate(eightLines());
  plain = await storedValues(await planningFile(model));
  values = await storedValues(await planningFile(typedInto(model, TYPED)));
}, LONG);

const under = (sheet: string, heading: string, row: number, book = values) => {
  const column = book.rows(sheet)[HEADINGS]?.indexOf(heading) ?? -1;
  return book.rows(sheet)[FIRST_ROW + row]?.[column];
};
const checked = (what: string, book = values) =>
  Number(book.rows("Checks").find(([label]) => label === what)?.[2]);

describe("several heats of a steel", () => {
  it("stand in rows of their own, and a line points at one", () => {
    expect(under("Cut list", "Grade", 2)).toBe("1075");
    expect(String(under("Cut list", "Cross-check", 2))).not.toMatch(/stock S9/);
    const heats = values
      .rows("Traveller")
      .flatMap((row) =>
        row[0] === "Heat no." ? [row[1]] : row.includes("Heat no.") ? [row[row.indexOf("Heat no.") + 1]] : [],
      );
    expect(heats).toContain("H-200");
    expect(heats).not.toContain("H-102");
  });

  it("a bar in the rack is used once", () => {
    const used = Number(under("Cut list", "Bars used kg", 2));
    expect(under("Cut list", "In the rack kg", 2)).toBe(60);
    expect(under("Cut list", "In the rack kg", 3)).toBeCloseTo(Math.max(0, 60 - used), 9);
  });
});

describe("a line in two batches", () => {
  it("the second row has what the first leaves, and both add up to the starts", () => {
    const starts = Number(under("Lines", "Starts", 1));
    expect(under("Heat batches", "Pieces", 1)).toBe(20);
    expect(under("Heat batches", "Pieces", 8)).toBe(starts - 20);
    expect(under("Lines", "Cross-check", 1)).toBe("OK");
  });

  it("the traveller tells that there is another batch", () => {
    const told = values.rows("Traveller").flatMap((row) => {
      const at = row.indexOf("Heat batch");
      return at < 0 ? [] : [String(row[at + 1])];
    });
    expect(told.slice(0, 3)).toEqual(["B1 and 1 more", "B2 and 1 more", "B3"]);
  });

  it("pieces that others have already are none, and two recipes in a batch are told", () => {
    expect(under("Heat batches", "Pieces", 9)).toBe(0);
    expect(String(under("Heat batches", "Cross-check", 9))).toMatch(
      /another recipe in the same batch.*rows above have all starts of the line/,
    );
  });
});

describe("a batch that comes back in two lots", () => {
  it("is counted over both, and each lot has its own readings", () => {
    expect([1, 10].map((row) => under("Lots received", "Pieces sent", row))).toEqual([20, 20]);
    expect([1, 10].map((row) => under("Lots received", "Blades read", row))).toEqual([2, 1]);
    expect(under("Lots received", "Mean HRC", 1)).toBeCloseTo(62.2, 9);
    expect(under("Lots received", "Mean HRC", 10)).toBeCloseTo(58, 9);
    expect(String(under("Lots received", "Lot", 10))).toMatch(/FAIL|1 pieces are missing/);
  });
});

describe("readings", () => {
  it("have a row for every start", () => {
    const starts = Array.from({ length: 8 }, (_, row) => Number(under("Lines", "Starts", row, plain)));
    const rows = plain.rows("Hardness readings").length - FIRST_ROW;
    expect(rows).toBeGreaterThanOrEqual(starts.reduce((sum, count) => sum + count, 0));
    expect(checked("Starts without a row for their readings: template --from makes room", plain)).toBe(0);
  });
});

describe("the section as hardened", () => {
  it("is the blade with what is ground off later, within the bar, and the order says both", () => {
    // 2.5 mm and 0.2 mm a face: 2.9 mm, of a bar of 3 mm. A sword is forged: no bar limits it.
    expect(under("Recipe", "Hardened mm", 0, plain)).toBeCloseTo(2.9, 9);
    expect(under("Recipe", "Hardened mm", 4, plain)).toBeCloseTo(6.4, 9);
    const sent = plain.rows("Heat-treat order").flatMap((row) => {
      const at = row.indexOf("Thickest as sent");
      return at < 0 ? [] : [String(row[at + 1])];
    });
    expect(sent).toContain("6.4 mm, finished 6 mm");
  });
});
