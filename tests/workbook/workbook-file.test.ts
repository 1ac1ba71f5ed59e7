import { expect, it } from "vitest";
import { cellsOf } from "../../src/formula/addresses";
import { type Calculation, calculateFile } from "../../src/workbook/file/patch/calculation";
import { patchWorkbook } from "../../src/workbook/file/patch/patch-workbook";
import { recalculate } from "../../src/workbook/file/patch/recalculate";
import { WorkbookFile } from "../../src/workbook/file/patch/workbook-file";
import { type LiveWorkbook, readLiveWorkbook } from "../../src/workbook/file/read/live-workbook";
import { shareCopy } from "../../src/workbook/share/share-copy";
import { verifyCopy } from "../../src/workbook/share/verify/verify-copy";
import { handMade } from "./hand-made";

const plan = (typed = "6") =>
  handMade({
    sheets: {
      Plan: `<sheetData><row r="1"><c r="A1"><v>${typed}</v></c><c r="B1"><f>A1*7</f><v>0</v></c></row></sheetData>`,
    },
  });

it("is calculated once for all who ask, and apart from a file that differs in a byte", async () => {
  const bytes = plan();
  const before = bytes.slice();
  const [first, again] = [
    await WorkbookFile.of(bytes).calculated(),
    await WorkbookFile.of(bytes).calculated(),
  ];
  expect(again.current).toBe(first.current);
  expect(first.current.sheets[0]?.stored.rows[0]?.cells[1]?.raw).toBe("42");
  // Read from the disk once more, it is the same file.
  expect((await WorkbookFile.of(bytes.slice()).calculated()).current).toBe(first.current);
  const other = plan("7");
  expect(other).toHaveLength(bytes.length);
  const { current } = await WorkbookFile.of(other).calculated();
  expect(current.sheets[0]?.stored.rows[0]?.cells[1]?.raw).toBe("49");
  expect(bytes).toEqual(before);
});

it("reads sheets anew in which results were written, and keeps the others", async () => {
  const sheet = (value: string) =>
    `<sheetData><row r="1"><c r="A1"><v>6</v></c><c r="B1"><f>A1*7</f><v>${value}</v></c></row></sheetData>`;
  const file = WorkbookFile.of(handMade({ sheets: { Stale: sheet("0"), Current: sheet("42") } }));
  const { current } = await file.calculated();
  const [stale, same] = current.sheets;
  expect(stale?.stored.rows[0]?.cells[1]?.raw).toBe("42");
  expect(file.live.sheets[0]?.stored.rows[0]?.cells[1]?.raw).toBe("0");
  expect(same?.stored).toBe(file.live.sheets[1]?.stored);
  expect(readLiveWorkbook(current.file.save()).sheets).toEqual(current.sheets);
});

/** Formulas of each kind: an error with its sentence, spills that grow, fixed areas, one that is left, one cut short. */
const OF_EACH_KIND = [
  '<c r="A1"><v>3</v></c><c r="B1" cm="1"><f t="array" ref="B1:B2">_xlfn.SEQUENCE(A1)</f><v>1</v></c><c r="C1"><f>SUM(_xlfn.ANCHORARRAY(B1))</f></c>',
  '<c r="A5"><f>_xldudf_BLADE_CARBON("NO SUCH STEEL")</f></c><c r="B5"><f>1/0</f></c>',
  '<c r="A6"><f t="array" ref="A6:B6">{7,8,9}</f></c><c r="B6"/><c r="C6"><f t="array" ref="C6">{1;2}</f></c>',
  '<c r="A7"><f>NO_SUCH_FUNCTION(1)</f><v>12</v></c><c r="B7"><f>_xldudf_BLADE_CARBON({"1095","O1"})</f></c>',
];

const ofEachKind = () =>
  handMade({
    sheets: {
      Plan: `<sheetData>${OF_EACH_KIND.map((cells) => `<row r="${/"A(\d+)"/.exec(cells)?.[1]}">${cells}</row>`).join("")}</sheetData>`,
    },
  });

/** All that a calculation says of the formulas of a workbook, by their cells. */
const told = (live: LiveWorkbook, done: Calculation) =>
  live.sheets.flatMap(({ formulas }) =>
    [...formulas.values()].map((formula) => {
      const { row, column } = formula.cell;
      const area = done.areaOf(formula);
      return {
        at: [row, column, done.handedOver(formula), done.left.get(formula), done.first.has(formula)],
        area,
        results: [...cellsOf(area)].map(([r, c]) => done.resultAt(formula, r, c)),
      };
    }),
  );

it("into which results were just written is what a calculation of it anew would make it", async () => {
  const changes = new Map([["Plan", [{ row: 0, column: 0, content: { value: 4 } }]]]);
  const { bytes } = await patchWorkbook(ofEachKind(), changes);
  const again = await patchWorkbook(bytes.slice(), new Map());
  expect(again).toEqual({ ...(await recalculate(bytes)), bytes });
  expect(again).toMatchObject({ isChanged: false, changed: 0, repaired: 0, formulas: 8 });
  expect(again.errors.map(({ cell, text }) => [cell, text.split(":")[0]])).toEqual([
    ["A5", "#N/A"],
    ["B5", "#DIV/0!"],
  ]);
  const file = WorkbookFile.of(bytes.slice());
  const { done, current } = await file.calculated();
  const live = readLiveWorkbook(bytes);
  const anew = await calculateFile(live);
  expect(told(file.live, done)).toEqual(told(live, anew));
  expect([done.left.size, done.first.size]).toEqual([2, 2]);
  expect(told(live, anew)[0]?.results).toEqual([1, 2, 3, 4].map((value) => ({ value })));
  expect([...done.printedRows]).toEqual([...anew.printedRows]);
  expect(current.sheets.map(({ stored }) => stored.xml)).toEqual(live.sheets.map(({ stored }) => stored.xml));
});

it("is the same for the next copy as for a first one", async () => {
  const bytes = plan();
  const copies = [await shareCopy(bytes), await shareCopy(bytes), await shareCopy(bytes.slice())];
  expect(copies[1]?.bytes).toEqual(copies[0]?.bytes);
  expect(copies[2]?.bytes).toEqual(copies[0]?.bytes);
  const done = await verifyCopy(bytes.slice(), copies[1]?.bytes ?? bytes);
  expect(done).toMatchObject({ isSound: true, differences: [] });
});

it("that cannot be read says so each time", () => {
  const bytes = new TextEncoder().encode("no workbook");
  for (const _ of [1, 2]) expect(() => WorkbookFile.of(bytes)).toThrow("The file is not an .xlsx workbook.");
});
