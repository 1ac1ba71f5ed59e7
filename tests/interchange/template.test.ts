import { beforeAll, expect, it } from "vitest";
import { patchWorkbook } from "../../src/workbook/file/patch/patch-workbook";
import { readDelimited } from "../../src/workbook/file/read/read-delimited";
import { FIRST_ROW } from "../../src/workbook/sheets/parts/table-sheet";
import { planningFile } from "../../src/workbook/sheets/planning-file";
import { planningTemplate } from "../../src/workbook/sheets/planning-template";
import { exampleData } from "../../src/workbook/sheets/template-data";
import { storedValues } from "../workbook/template-cells";
import { filledEight } from "../workbook/typed-run";
import {
  allConverted,
  CSV_OF_ALL_SHEETS,
  converted,
  hasLibreOffice,
  hasPdfToText,
  printed,
  wordsOf,
} from "./office";

const LONG = 300_000;

const { name, sheets } = planningTemplate(exampleData());
/** Every sheet of the run and of an empty plan as text. */
let texts: ReadonlyMap<string, string>;

beforeAll(async () => {
  if (!hasLibreOffice) return;
  const files = new Map([
    ["run.xlsx", await planningFile({ name, sheets })],
    ["empty.xlsx", await planningFile(planningTemplate())],
  ]);
  texts = new Map(
    [...allConverted(files, CSV_OF_ALL_SHEETS)].map(([file, bytes]) => [file, bytes.toString("utf8")]),
  );
}, LONG);

const hiddenColumns = new Map(sheets.map((sheet) => [sheet.name, sheet.hiddenColumns ?? []]));

/** What a sheet of the run shows: hidden columns are left out. */
function inSight(file: string): string {
  const hidden = hiddenColumns.get(file.replace(/^run-|\.csv$/g, "")) ?? [];
  const [sheet] = readDelimited(new TextEncoder().encode(texts.get(file)), file).sheets;
  const shown = sheet?.cells.filter(({ column }) => !hidden.includes(column)) ?? [];
  return JSON.stringify(shown.map(({ content }) => content));
}

const textsOf = (workbook: string) => [...texts].filter(([file]) => file.startsWith(`${workbook}-`));

// LibreOffice 7.4 or later as a reader without the add-in. It works cells with an empty stored text out anew, so none
// of those may need one of our functions. Starts by the binomial distribution, bars by hand: see tests/workbook.
it.runIf(hasLibreOffice)(
  "opens in LibreOffice with its numbers, and no name that it does not know",
  () => {
    expect(textsOf("run")).toHaveLength(sheets.length + 1);
    for (const [file] of textsOf("run"))
      expect(inSight(file), file).not.toMatch(/#NAME\?|#VALUE!|#N\/A|#REF!|Err:\d/);
    const cuts = texts.get("run-Cut list.csv") ?? "";
    expect(cuts).toMatch(/^L1,52100,S1,24,28,0\.9313\d*,0,,346,50,3,3000,0,8,4,14\.058,/m);
    expect(cuts).toMatch(/^L4,C60,S4,6,8,0\.9619\d*,0,,128,40,20,3000,0,23,1,/m);
    expect(texts.get("run-Heat-treat order.csv")).toMatch(
      /Austenitise,"845 °C \(1553 °F\), ± 10 °C \(18 °F\)"/,
    );
  },
  LONG,
);

it.runIf(hasLibreOffice)(
  "keeps working in LibreOffice while it is empty",
  () => {
    expect(textsOf("empty").length).toBeGreaterThan(20);
    for (const [file, text] of textsOf("empty"))
      expect(text, file).not.toMatch(/#VALUE!|#N\/A|#REF!|#DIV|Err:\d/);
  },
  LONG,
);

// LibreOffice saves a formula that fills cells as one of fixed size (found with 7.4): all of the answer has room in it.
it.runIf(hasLibreOffice)(
  "counts the offers that are typed into a plan which LibreOffice saved",
  async () => {
    const data = exampleData();
    const before = await planningFile(planningTemplate({ ...data, offers: [] }));
    const saved = converted("plan.xlsx", before, "xlsx").get("plan.xlsx") ?? new Uint8Array();
    const typed = data.offers.flatMap((row, at) =>
      row.flatMap((value, column) =>
        value === null || value === undefined ? [] : [{ row: FIRST_ROW + at, column, content: { value } }],
      ),
    );
    const { bytes } = await patchWorkbook(saved, new Map([["Offers", typed]]));
    const shown = async (file: Uint8Array) => (await storedValues(file)).rows("Best offer").slice(7);
    const wanted = await shown(await planningFile(planningTemplate(data)));
    const found = await shown(bytes);
    expect(wanted.filter(([first]) => first === "total")).toHaveLength(1);
    for (const [at, row] of wanted.entries())
      expect(found[at]?.slice(0, 9), `row ${at + 8}`).toEqual(row.slice(0, 9));
  },
  LONG,
);

// Three orders to the supplier's pages of three lines each, a page a batch that goes out, a page a line.
it.runIf(hasLibreOffice && hasPdfToText)(
  "prints of the papers of a plan that was filled and calculated the pages that have a subject",
  async () => {
    const pages = wordsOf(await printed("plan.xlsx", await filledEight())).split("\f");
    const headed = (paper: string) =>
      pages.filter((page) => page.includes(`Tern Hollow Forge`) && new RegExp(`Forge +${paper}`).test(page));
    expect(headed("Steel order")).toHaveLength(3);
    expect(headed("Steel enquiry")).toHaveLength(3);
    expect(headed("Heat-treat order")).toHaveLength(3);
    expect(headed("Traveller")).toHaveLength(8);
    expect(pages.filter((page) => /^\s*Supplier +Page\s*$/m.test(page))).toEqual([]);
  },
  LONG,
);
