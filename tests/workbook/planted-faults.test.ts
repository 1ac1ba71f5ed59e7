import { beforeAll, describe, expect, it } from "vitest";
import type { SheetModel, WorkbookModel } from "../../src/workbook/model/sheet-model";
import { dateSerial, HEADINGS } from "../../src/workbook/sheets/parts/table-sheet";
import { planningFile } from "../../src/workbook/sheets/planning-file";
import { planningTemplate } from "../../src/workbook/sheets/planning-template";
import type { TemplateData } from "../../src/workbook/sheets/template-data";
import { planOfEight } from "./answers/plans";
import { eightLines } from "./eight-lines";
import { type StoredValues, storedValues } from "./template-cells";

const LONG = 300_000;

const cellAt = (rows: TemplateData["blanks"], row: number, column: number, value: number | string | null) =>
  rows.map((cells, place) => (place === row ? cells.map((cell, c) => (c === column ? value : cell)) : cells));

/** The eight lines with a fault planted in each of them, in batches, stock, hours and dates. */
function spoilt(): TemplateData {
  const { lines, batches, heats, blanks, costs, cover, steels, ...rest } = eightLines();
  const changes: Readonly<Record<string, Partial<(typeof lines)[number]>>> = {
    K3: { aim: 66 },
    K5: { steel: "no such steel" },
    K6: { length: -900 },
  };
  const thinner = cellAt(blanks, 6, 2, 5);
  const narrower = cellAt(thinner, 7, 1, 20);
  return {
    ...rest,
    lines: lines.map((line) => ({ ...line, ...changes[line.line] })),
    batches: [
      ...batches.filter(([, , line]) => line !== "K2"),
      ["B9", "in-house", "K3", 250, 12, 40, 6, 3, null, null, null, null, null, 28],
    ],
    steels: cellAt(steels, 1, 0, "S1"),
    heats: cellAt(heats, 0, 1, "52100"),
    blanks: cellAt(cellAt(narrower, 3, 0, 100), 2, 3, 400),
    costs: costs.map((row, at) => (at === 1 ? [12, 1, "unit", 2, 5, 9, 2, 0.35] : row)),
    prices: cellAt(rest.prices, 2, 1, "2027-01-04"),
    cover: {
      ...cover,
      furnaceKg: 2,
      furnaceLength: 600,
      due: "2026-09-01",
      enquired: "2026-09-20",
      steelBy: "2026-01-05",
    },
  };
}

/** Days typed into the sheets: sheet, row counted from the first, heading, what is typed. */
const DAYS: readonly (readonly [sheet: string, row: number, heading: string, typed: number | string])[] = [
  ["Steel and heats", 3, "Delivery", "2026-W02"],
  ["Steel and heats", 5, "Received on", dateSerial("2027-02-01")],
  ["Enquiry", 0, "Ready", dateSerial("2026-01-05")],
  ["Heat batches", 6, "Back by", dateSerial("2027-01-04")],
  ["Lots received", 0, "Back on", dateSerial("2027-01-11")],
  ["Hardness readings", 0, "Date", "1st of October"],
  ["Shipping", 0, "Sent", dateSerial("2020-01-06")],
];

/** A day on the cover that its data do not hold: the smith types it there. */
const LEGAL_CHECK = { label: "Legal check on", typed: dateSerial("2026-08-03") };

function withLegalCheck(sheet: SheetModel): SheetModel {
  if (sheet.name !== "Cover") return sheet;
  const rows = sheet.rows.map((cells) =>
    cells[0]?.content === LEGAL_CHECK.label
      ? cells.map((cell, at) => (at === 1 && cell ? { ...cell, content: LEGAL_CHECK.typed } : cell))
      : cells,
  );
  return { ...sheet, rows };
}

function withDays(sheet: SheetModel): SheetModel {
  const typed = DAYS.filter(([name]) => name === sheet.name);
  const column = (heading: string) =>
    sheet.rows[HEADINGS]?.findIndex((cell) => cell?.content === heading) ?? -1;
  const rows = sheet.rows.map((cells, row) =>
    typed
      .filter(([, place]) => row === HEADINGS + 1 + place)
      .reduce<typeof cells>(
        (before, [, , heading, content]) => {
          const at = column(heading);
          return before.map((cell, place) =>
            place === at && cell !== undefined ? { ...cell, content } : cell,
          );
        },
        named(sheet.name, cells),
      ),
  );
  return { ...sheet, rows };
}

/** Rows of these sheets begin with a name that the smith types. */
const named = (sheet: string, cells: SheetModel["rows"][number]): SheetModel["rows"][number] =>
  ["Hardness readings", "Shipping"].includes(sheet) && cells[0]?.role === "typed" && cells[0].content === ""
    ? [{ ...cells[0], content: "A1" }, ...cells.slice(1)]
    : cells;

const spoiltModel = (): WorkbookModel => {
  const { sheets, ...rest } = planningTemplate(spoilt());
  return { ...rest, sheets: sheets.map(withDays).map(withLegalCheck) };
};

/** What is planted, the check that must find it, and what stands beside the cell. */
const PLANTED: readonly (readonly [
  what: string,
  check: string,
  beside: readonly [sheet: string, line: string, heading: string, said: RegExp],
])[] = [
  [
    "a line in two batches",
    "Cross-checks that fail on Lines",
    ["Lines", "K3", "Cross-check", /56 of 28 starts in heat batches/],
  ],
  [
    "a line in no batch",
    "Cross-checks that fail on Lines",
    ["Lines", "K2", "Cross-check", /in no heat batch/],
  ],
  [
    "an O1 line pointed at 52100 stock",
    "Cross-checks that fail on Cut list",
    ["Cut list", "K1", "Cross-check", /stock S1 is 52100, the line O1/],
  ],
  [
    "a bar thinner than the blade",
    "Cross-checks that fail on Cut list",
    ["Cut list", "K7", "Cross-check", /bar thickness of 5 mm, the blade 7/],
  ],
  [
    "a bar narrower than the blade",
    "Cross-checks that fail on Cut list",
    ["Cut list", "K8", "Cross-check", /bar width of 20 mm, the blade 28/],
  ],
  [
    "a blank shorter than the blade",
    "Cross-checks that fail on Cut list",
    ["Cut list", "K4", "Cross-check", /blank length of 100 mm, the blade 130/],
  ],
  [
    "a bar shorter than the blade",
    "Cross-checks that fail on Cut list",
    ["Cut list", "K3", "Cross-check", /bar of 400 mm, the blank 610/],
  ],
  [
    "hours that do not go with the route",
    "Hours that do not go with the route",
    ["Costs", "K2", "Hours against the route", /h here, .* h by the route/],
  ],
  [
    "a negative length",
    "Cross-checks that fail on Lines",
    ["Lines", "K6", "Cross-check", /a length below 0/],
  ],
  [
    "a batch over the furnace",
    "Cross-checks that fail on Heat batches",
    [
      "Heat batches",
      "B3",
      "Cross-check",
      /a load of 3\.\d kg, the furnace takes 2|a load of \d\.\d kg, the furnace takes 2/,
    ],
  ],
  [
    "a batch longer than the furnace",
    "Cross-checks that fail on Heat batches",
    ["Heat batches", "B3", "Cross-check", /blade and tang of 610 mm, the furnace takes 600/],
  ],
  [
    "a due date before the day of the figures",
    "Days on the cover that cannot be",
    ["Cover", "Due", "", /^CHECK: before the day of the figures$/],
  ],
  [
    "an enquiry after the day of the figures, and after the day it is due",
    "Days on the cover that cannot be",
    ["Cover", "Enquiry of", "", /^CHECK: after the day of the figures; after the day it is due$/],
  ],
  [
    "steel wanted before it is ordered",
    "Days on the cover that cannot be",
    ["Cover", "Steel wanted by", "", /^CHECK: before the day of the figures$/],
  ],
  [
    "a legal check before the enquiry",
    "Days on the cover that cannot be",
    ["Cover", "Legal check on", "", /^CHECK: before .*enquiry/],
  ],
  [
    "a price of a day still to come",
    "Days that cannot be on Steel and heats",
    ["Steel and heats", "S3", "Dates", /price after the day of the figures/],
  ],
  [
    "steel delivered in a week before the order",
    "Days that cannot be on Steel and heats",
    ["Steel and heats", "S4", "Dates", /delivery before the day of the figures/],
  ],
  [
    "steel received after the run is due",
    "Days that cannot be on Steel and heats",
    ["Steel and heats", "S6", "Dates", /received after the day the run is due/],
  ],
  [
    "a line ready before the day of the figures",
    "Days that cannot be on Enquiry",
    ["Enquiry", "K1", "Dates", /ready before the day of the figures/],
  ],
  [
    "blades back from the heat treater after the run is due",
    "Cross-checks that fail on Heat batches",
    ["Heat batches", "B8", "Cross-check", /back after the day the run is due/],
  ],
  [
    "a hardened lot back after the run is due",
    "Days that cannot be on Lots received",
    ["Lots received", "B1", "Dates", /after the day it is due/],
  ],
  [
    "a day of a reading that is no date",
    "Days that cannot be on Hardness readings",
    ["Hardness readings", "A1", "Dates", /is no date: write it like 2026-10-05/],
  ],
  [
    "a box sent before it was asked for",
    "Days that cannot be on Shipping",
    ["Shipping", "A1", "Dates", /before the enquiry/],
  ],
  [
    "a hardness out of reach",
    "Lines whose hardness is out of reach: the quote stops",
    ["Lines", "K3", "Against the band", /out of reach/],
  ],
  [
    "a name of steel that stands twice",
    "Names of steel that stand twice: the second is never read",
    ["Cut list", "K2", "Steel in stock", /^S1$/],
  ],
  ["a steel that nobody knows", "Lines that were not assessed", ["Lines", "K5", "Caution", /no such steel/]],
];

describe("planted faults", () => {
  let stored: StoredValues;
  let values: StoredValues;
  const found = new Set<string>();
  beforeAll(async () => {
    stored = await storedValues(await planOfEight());
    values = await storedValues(await planningFile(spoiltModel()));
  }, LONG);

  const countOf = (book: StoredValues, what: string) =>
    Number(book.rows("Checks").find(([label]) => label === what)?.[2]);

  it.each(PLANTED)(
    "%s is found in Checks and beside the cell",
    (what, check, [sheet, line, heading, said]) => {
      expect(countOf(values, check)).toBeGreaterThan(countOf(stored, check));
      const row = values.rows(sheet).find(([label]) => label === line);
      const beside = sheet === "Cover" ? row?.[3] : values.figure(sheet, line, heading);
      expect(String(beside)).toMatch(said);
      found.add(what);
    },
  );

  it(`are ${PLANTED.length} in number, all found`, () => {
    expect(`${found.size} of ${PLANTED.length}`).toBe(`${PLANTED.length} of ${PLANTED.length}`);
  });

  it("counts a day of the cover once, whatever is odd about it", () => {
    expect(countOf(values, "Days on the cover that cannot be")).toBe(4);
    expect(countOf(stored, "Days on the cover that cannot be")).toBe(0);
  });

  it("stops the quote where the hardness is out of reach", () => {
    const row = values.rows("Quote").find(([line]) => line === "K3");
    expect(row?.slice(3, 5)).toEqual(["hardness to be agreed first", "hardness to be agreed first"]);
  });
});

describe("a ninth line typed under the table", () => {
  it(
    "counts nowhere, and is told in Checks and beside the cell",
    async () => {
      const data = eightLines();
      const model = planningTemplate(data, 8);
      const under = model.sheets.map((sheet) => {
        if (sheet.name !== "Lines") return sheet;
        const row = sheet.lines[1] + 1;
        const guard = sheet.rows[row] ?? [];
        const typed = [{ role: "typed", content: "K9" } as const, ...guard.slice(1)];
        return { ...sheet, rows: sheet.rows.map((cells, place) => (place === row ? typed : cells)) };
      });
      const values = await storedValues(await planningFile({ ...model, sheets: under }));
      const row = values.rows("Lines").find(([line]) => line === "K9");
      expect(row?.map(String).join(" ")).toMatch(/CHECK: under the table, counts nowhere/);
      const count = values.rows("Checks").find(([label]) => /typed under a table/.test(String(label)));
      expect(count?.slice(2, 4)).toEqual([1, "CHECK"]);
    },
    LONG,
  );
});
