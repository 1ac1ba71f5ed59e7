import { describe, expect, test } from "vitest";
import { excelPort } from "../../src/host/excel";
import type { Block, FormulaChange, FormulaPart, LineChart } from "../../src/host/port";
import { hostProblem, type Mock, NOTHING, named, playExcel, range, type Seed } from "./mock-excel";

/** Newest sets of an Excel that knows no spills, one that knows them, and one that groups undo (vendor's typings). */
const OLD = 8;
const SPILLS = 12;
const NEW = 20;

/** A workbook whose selected cell is this one. */
function selecting(cell: Seed): Seed {
  return {
    cell: range(cell),
    getActiveCell(this: Mock) {
      return this.cell;
    },
  };
}

const CELL = {
  address: "Plan!D7",
  formulas: [['=BLADE.CARBON("1095")']],
  formulasLocal: [['=BLADE.CARBON("1095")']],
  text: [["0.95"]],
  values: [[0.95]],
  valueTypes: [["Double"]],
  rowIndex: 6,
  columnIndex: 3,
};

describe("the selected cell", () => {
  test("is read only after it was loaded", async () => {
    playExcel(selecting(CELL), OLD);
    expect(await excelPort.selection()).toEqual({
      address: "Plan!D7",
      formula: '=BLADE.CARBON("1095")',
      shown: '=BLADE.CARBON("1095")',
      value: "0.95",
      figure: "0.95",
      error: "",
      filledBy: null,
      sentence: "",
    });
  });

  test("in a language with a decimal comma the formula is shown as typed there, the figure read as one", async () => {
    const german = {
      ...CELL,
      formulas: [["=BLADE.TEMPERED_HRC(A7,205.5)"]],
      formulasLocal: [["=BLADE.TEMPERED_HRC(A7;205,5)"]],
      text: [["60,9"]],
      values: [[60.9]],
      getSpillParentOrNullObject: () => ({ isNullObject: true, load: () => undefined }),
    };
    playExcel({ ...selecting(german), application: { decimalSeparator: "," } }, SPILLS);
    expect(await excelPort.selection()).toMatchObject({
      formula: "=BLADE.TEMPERED_HRC(A7,205.5)",
      shown: "=BLADE.TEMPERED_HRC(A7;205,5)",
      value: "60,9",
      figure: "60.9",
    });
    expect(await excelPort.separators()).toEqual({ decimal: ",", list: ";" });
  });

  test("an error is known by its kind, not by the word for it", async () => {
    // The words of a German Excel for #NAME? and #N/A.
    const held = (text: string, errorType: string) => ({
      ...CELL,
      text: [[text]],
      values: [[text]],
      valueTypes: [["Error"]],
      valuesAsJson: [[{ type: "Error", errorType, basicValue: text }]],
      getSpillParentOrNullObject: () => ({ isNullObject: true, load: () => undefined }),
    });
    const application = { decimalSeparator: "," };
    for (const [text, kind, code] of [
      ["#NAME?", "Name", "#NAME?"],
      ["#NV", "NotAvailable", "#N/A"],
    ] as const) {
      playExcel({ ...selecting(held(text, kind)), application }, 16);
      expect((await excelPort.selection())?.error).toBe(code);
    }
  });

  test.each([
    ["Plan!C5", { address: "Plan!C5", formula: "=BLADE.GRADES()", row: 2, column: 1 }],
    ["Plan!D7", null],
  ])("a formula in %s that fills it", async (address, expected) => {
    const parent = range({ address, formulas: [["=BLADE.GRADES()"]], rowIndex: 4, columnIndex: 2 });
    const application = { decimalSeparator: "." };
    const getSpillParentOrNullObject = function (this: Mock) {
      return this.parent;
    };
    playExcel({ ...selecting({ ...CELL, parent, getSpillParentOrNullObject }), application }, SPILLS);
    expect((await excelPort.selection())?.filledBy).toEqual(expected);
  });

  test("changes are heard of until the end of the subscription; the theme is Excel's", () => {
    playExcel({}, OLD);
    const { listeners } = Office.context.document as unknown as { listeners: Set<() => void> };
    const changed = () => undefined;
    const stop = excelPort.onSelection(changed);
    expect([...listeners]).toEqual([changed]);
    stop();
    expect(listeners.size).toBe(0);
    expect(excelPort.theme()).toBe("dark");
  });
});

describe("values of references", () => {
  const values = range({
    cellCount: 4,
    values: [
      [58, ""],
      ["#N/A", "1095"],
    ],
    valueTypes: [
      ["Double", "Empty"],
      ["Error", "String"],
    ],
  });
  const huge = range({ cellCount: 1_048_576, values: [[]], valueTypes: [[]] });
  const sheet: Seed = {
    isNullObject: false,
    name: "Plan",
    values,
    huge,
    asked: "",
    getRange(this: Mock, address: string) {
      this.asked = address;
      return address === "A:A" ? { getIntersectionOrNullObject: () => this.huge } : this.values;
    },
    getUsedRange: () => null,
  };
  const kerf: Seed = {
    isNullObject: false,
    name: "Kerf",
    cell: range({ cellCount: 1, values: [[1.6]], valueTypes: [["Double"]] }),
    getRangeOrNullObject(this: Mock) {
      return this.cell;
    },
  };
  const book = { worksheets: named({ Plan: sheet, "Run's plan": sheet }), names: named({ Kerf: kerf }) };

  test("numbers, texts, empty cells and errors, from the formula's own sheet", async () => {
    const { workbook } = playExcel(book, OLD);
    expect(await excelPort.readValues(["$A$2:B3"], "Plan!D7")).toEqual([
      [
        [58, null],
        [{ type: "Error", basicValue: "#N/A" }, "1095"],
      ],
    ]);
    expect(workbook.worksheets.Plan.asked).toBe("$A$2:B3");
  });

  test("another sheet, a defined name, and null for what is not there, too large or in another workbook", async () => {
    playExcel(book, OLD);
    const references = [
      "'Run''s plan'!A2:B3",
      "Kerf",
      "Nobody",
      "Gone!A1",
      "A:A",
      "[2]Plan!A1",
      "Lines[Temper C]",
    ];
    const read = await excelPort.readValues(references, "Plan!D7");
    expect(read.map((rows) => rows?.length ?? null)).toEqual([2, 1, null, null, null, null, null]);
    expect(await excelPort.readValues([], "Plan!D7")).toEqual([]);
  });
});

const BLOCK: Block = {
  rows: [
    ["1095", ""],
    ["temper C", "likely HRC"],
    [150, 63],
    [200, "=1+59"],
  ],
  heading: 1,
};

const CHART: LineChart = {
  title: "1095",
  horizontal: "temper C",
  vertical: "HRC",
  columns: [0, 1],
  rows: [2, 3],
};

/** A range that lets itself be resized, and notes what its chart was made of. */
function writable(seed: Seed, charts: Seed): Seed {
  return range({
    ...seed,
    format: { verticalAlignment: "" },
    bold: { format: { font: { bold: false } } },
    worksheet: { charts },
    resized: "",
    getResizedRange(this: Mock, rows: number, columns: number) {
      this.resized = `${rows},${columns}`;
      return this;
    },
    getRow(this: Mock, row: number) {
      this.boldRow = row;
      return this.bold;
    },
    getCell: (row: number, column: number) => ({
      getBoundingRect: (other: string) => `R${row}C${column}:${other}`,
      getOffsetRange: (down: number, right: number) => `R${row}C${column}+${down},${right}`,
      toString: () => `R${row}C${column}`,
    }),
  });
}

function chartList(): Seed {
  const line = () => ({
    name: "",
    setXAxisValues(this: Mock, from: unknown) {
      this.x = String(from);
    },
    setValues(this: Mock, from: unknown) {
      this.y = String(from);
    },
  });
  return {
    chart: {
      title: { text: "" },
      axes: { categoryAxis: { title: { text: "" } }, valueAxis: { title: { text: "" } } },
      legend: { position: "" },
      series: {
        first: line(),
        getItemAt(this: Mock) {
          return this.first;
        },
      },
      setPosition(this: Mock, at: unknown) {
        this.at = String(at);
      },
    },
    add(this: Mock, type: string) {
      this.type = type;
      return this.chart;
    },
  };
}

describe("writing", () => {
  const protectedCell = {
    getActiveCell: () => {
      throw hostProblem("AccessDenied");
    },
  };

  test("a formula goes into the selected cell", async () => {
    const { workbook } = playExcel(selecting(CELL), OLD);
    expect(await excelPort.insertFormula("=BLADE.VERSION()")).toBe("Plan!D7");
    expect(workbook.cell.formulas).toEqual([["=BLADE.VERSION()"]]);
  });

  test("what Excel refuses is said in a sentence", async () => {
    playExcel(protectedCell, OLD);
    await expect(excelPort.insertFormula("=1")).rejects.toThrow(
      "Excel did not take the formula: the sheet is protected",
    );
    await expect(excelPort.writeBlock(BLOCK)).rejects.toThrow(
      "Excel did not take the table: the sheet is protected",
    );
  });

  test("a block's place is told with how much stands there", async () => {
    const formulas = [
      ["x", ""],
      ["", "=A1"],
    ];
    const cell = writable({ address: "Plan!B2:C5", formulas }, chartList());
    const { workbook } = playExcel(selecting(cell), OLD);
    expect(await excelPort.placeFor(BLOCK)).toEqual({ address: "Plan!B2:C5", filled: 2 });
    expect(workbook.cell.resized).toBe("3,1");
  });

  test("a block with its chart is one run, with one undo step where Excel can", async () => {
    const cell = writable({ address: "Plan!B2:C5", formulas: [[]] }, chartList());
    const { workbook, runs } = playExcel(selecting(cell), NEW);
    expect(await excelPort.writeBlock(BLOCK, CHART)).toBe("Plan!B2:C5");
    expect(workbook.cell.formulas).toEqual(BLOCK.rows);
    expect(workbook.cell.bold.format.font.bold).toBe(true);
    expect(workbook.cell.boldRow).toBe(1);
    const { charts } = workbook.cell.worksheet;
    expect(charts.type).toBe("XYScatterLinesNoMarkers");
    expect(charts.chart.title.text).toBe("1095");
    expect(charts.chart.axes.valueAxis.title.text).toBe("HRC");
    expect(charts.chart.series.first).toMatchObject({ name: "likely HRC", x: "R2C0:R3C0", y: "R2C1:R3C1" });
    expect(charts.chart.at).toBe("R0C1+0,1");
    expect(runs).toEqual([{ mergeUndoGroup: true }]);
  });

  test("a new sheet gets a free name", async () => {
    const cell = writable({ address: "1095 2!A1:B4", formulas: [[]] }, chartList());
    const added: Seed = {
      cell,
      getRange(this: Mock) {
        return this.cell;
      },
      activate(this: Mock) {
        this.isShown = true;
      },
    };
    const worksheets = {
      ...named({ "1095": { name: "1095" } }),
      added,
      add(this: Mock, name: string) {
        this.wanted = name;
        return this.added;
      },
    };
    const { workbook, runs } = playExcel({ worksheets }, OLD);
    expect(await excelPort.addSheet("1095", BLOCK)).toBe("1095 2");
    expect(workbook.worksheets.wanted).toBe("1095 2");
    expect(workbook.worksheets.added.isShown).toBe(true);
    expect(workbook.worksheets.added.cell.formulas).toEqual(BLOCK.rows);
    expect(runs).toEqual([{}]);
  });
});

describe("sheets to be printed", () => {
  const sheet = (name: string, visibility: string): Seed => ({
    name,
    visibility,
    activate(this: Mock) {
      this.isShown = true;
    },
  });

  test("those that can be seen are named, and one is shown", async () => {
    const worksheets = named({ Plan: sheet("Plan", "Visible"), Lists: sheet("Lists", "Hidden") });
    const { workbook } = playExcel({ worksheets }, OLD);
    expect(await excelPort.sheetNames()).toEqual(["Plan"]);
    await excelPort.showSheet("Plan");
    expect(workbook.worksheets.Plan.isShown).toBe(true);
  });
});

describe("formulas of the workbook", () => {
  const part = range({
    formulas: [["=BLADE.CARBON(A1)", 5]],
    values: [["#NOM?", 5]],
    valueTypes: [["Error", "Double"]],
  });
  const usedPart = range({ rowIndex: 2, columnIndex: 1, rowCount: 3000, columnCount: 2 });
  const plan: Seed = {
    name: "Plan",
    protection: { protected: true },
    used: usedPart,
    part,
    asked: [],
    load(this: Mock) {
      return this;
    },
    getUsedRangeOrNullObject(this: Mock) {
      return this.used;
    },
    getRangeByIndexes(this: Mock, ...at: number[]) {
      this.last = at;
      return this.part;
    },
  };
  const empty: Seed = {
    name: "Empty",
    protection: { protected: false },
    nothing: NOTHING,
    getUsedRangeOrNullObject(this: Mock) {
      return this.nothing;
    },
  };

  test("come in parts of some thousand cells, each with its place and how far it is", async () => {
    const { workbook } = playExcel({ worksheets: named({ Plan: plan, Empty: empty }) }, OLD);
    const sheets = workbook.worksheets;
    sheets.Plan.name = "Plan";
    sheets.Plan.protection.protected = true;
    const parts: FormulaPart[] = [];
    for await (const one of excelPort.formulas()) parts.push(one);
    expect(parts.map(({ row, column, done }) => [row, column, done])).toEqual([
      [2, 1, 2500 / 3000],
      [2502, 1, 1],
    ]);
    expect(sheets.Plan.last).toEqual([2502, 1, 500, 2]);
    expect(parts[0]).toMatchObject({
      sheet: "Plan",
      isProtected: true,
      formulas: [["=BLADE.CARBON(A1)", "5"]],
      // A French Excel's word, from a version that does not tell kinds: none of the other codes.
      unknownNames: [[true, false]],
    });
  });

  const changes = (count: number): FormulaChange[] =>
    Array.from({ length: count }, (_, row) => ({ sheet: "Plan", row, column: 0, formula: `=${row}` }));

  /** A sheet whose cells each stand for themselves but one, which the formula above fills. */
  function cells(count: number, filled: number): Seed {
    const all = Object.fromEntries(
      Array.from({ length: count }, (_, row) => {
        const parent = { isNullObject: row !== filled, address: "Plan!A1" };
        const own: Seed = {
          address: `Plan!A${row + 1}`,
          formulas: [[""]],
          parent,
          getSpillParentOrNullObject(this: Mock) {
            return this.parent;
          },
        };
        return [`r${row}`, own];
      }),
    );
    return {
      ...all,
      getCell(this: Mock, row: number) {
        return this[`r${row}`];
      },
    };
  }

  function work(stopAfter: number) {
    const stopper = new AbortController();
    const seen: number[] = [];
    const progress = (done: number) => {
      seen.push(done);
      if (seen.length >= stopAfter) stopper.abort();
    };
    return { signal: stopper.signal, progress, seen };
  }

  test("are entered anew, but not into a cell that another formula fills", async () => {
    const { workbook, runs } = playExcel({ worksheets: named({ Plan: cells(3, 1) }) }, NEW);
    expect(await excelPort.replaceFormulas(changes(3), work(9))).toBe(2);
    const { r0, r1, r2 } = workbook.worksheets.Plan;
    expect([r0.formulas, r2.formulas]).toEqual([[["=0"]], [["=2"]]]);
    expect(r1.formulas).not.toEqual([["=1"]]);
    expect(runs).toEqual([{ mergeUndoGroup: true }]);
  });

  test("a stop leaves the rest as it was", async () => {
    playExcel({ worksheets: named({ Plan: cells(450, -1) }) }, OLD);
    const stopping = work(1);
    expect(await excelPort.replaceFormulas(changes(450), stopping)).toBe(200);
    expect(stopping.seen).toEqual([200 / 450]);
  });
});

describe("the whole workbook", () => {
  test("is worked out anew with every formula, clean ones too", async () => {
    const application = {
      calculate(this: Mock, kind: string) {
        this.asked = kind;
      },
    };
    const { workbook } = playExcel({ application }, OLD);
    await excelPort.recalculate();
    expect(workbook.application.asked).toBe("Full");
  });

  test("health tells the newest sets that are known, and never throws where the pages' host is silent", async () => {
    playExcel({}, SPILLS);
    const facts = new Map(await excelPort.health());
    expect(facts.get("Interface of the sheet (ExcelApi)")).toBe("1.12");
    expect(facts.get("Version on the host of the pages")).toMatch(/does not answer/);
  });
});
