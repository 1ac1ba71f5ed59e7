import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { Calculator } from "../../src/engine/calculation/calculator";
import type { CellInput, CellValue } from "../../src/engine/cell-value";
import { SAMPLES } from "./sample-functions";
import { type Typed, typedSheet } from "./typed-cell";

// Expected figures are plain arithmetic; what depends on what follows from the formulas themselves.

let calculator: Calculator;

const content = (typed: Typed): CellInput | undefined => typedSheet("", [[typed]]).rows[0]?.[0];

/** Changes cells by row, column and what is typed; gives the places that show something else. */
function edit(...changes: readonly (readonly [row: number, column: number, typed: Typed])[]): string[] {
  const given = changes.map(([row, column, typed]) => ({ sheet: 0, row, column, content: content(typed) }));
  return calculator.change(given).map(({ row, column }) => `${row},${column}`);
}

const at = (row: number, column: number) => calculator.at(0, row, column);

function start(rows: Typed[][]): void {
  calculator = new Calculator({ sheets: [typedSheet("Plan", rows)], names: { Rate: "Plan!$A$2" } }, SAMPLES);
  calculator.calculateAll();
}

beforeEach(() => {
  start([
    [1, "=A1*2", "=B1+10", "=SUM(A1:A3)"],
    [5, "=A2*2", "=INDIRECT(A4)", "=OFFSET(A1,A1,0)"],
    [7, "=RAND()", "=C2+100", "=Rate*3"],
    ["A1", "=IF(A1>0,1,2)", "=B4+1"],
  ]);
});

afterEach(() => calculator.dispose());

test("an edit works out its dependents and nothing else", () => {
  const changed = edit([0, 0, 3]);
  expect([at(0, 1), at(0, 2), at(0, 3)]).toEqual([{ value: 6 }, { value: 16 }, { value: 15 }]);
  // RAND always, INDIRECT and OFFSET by what they read; A2*2 and Rate*3 read nothing that changed.
  for (const kept of ["1,1", "2,3"]) expect(changed).not.toContain(kept);
});

test("a formula that comes to the same stops what follows from it", () => {
  const changed = edit([0, 0, 3]);
  expect(changed).not.toContain("3,1");
  expect(changed).not.toContain("3,2");
});

test("names are followed to their cells", () => {
  edit([1, 0, 50]);
  expect([at(0, 3), at(1, 1), at(2, 3)]).toEqual([{ value: 58 }, { value: 100 }, { value: 150 }]);
});

test("formulas whose cells move with values follow them", () => {
  expect([at(1, 2), at(1, 3), at(2, 2)]).toEqual([{ value: 1 }, { value: 5 }, { value: 101 }]);
  edit([3, 0, "A3"]);
  expect([at(1, 2), at(2, 2)]).toEqual([{ value: 7 }, { value: 107 }]);
  edit([2, 0, 9]);
  expect([at(1, 2), at(2, 2)]).toEqual([{ value: 9 }, { value: 109 }]);
  edit([0, 0, 2]);
  expect(at(1, 3)).toEqual({ value: 9 });
});

test("a volatile function is worked out at every change", () => {
  const before = at(2, 1);
  edit([0, 0, 4]);
  expect(at(2, 1)).not.toEqual(before);
});

test("what depends on the day is worked out on another day, and not at every change", () => {
  vi.useFakeTimers({ toFake: ["Date"], now: new Date(2026, 2, 1, 23, 50) });
  try {
    start([[1, '=IF(C1="",TODAY(),C1)', undefined, "=B1+1"]]);
    // Counted by hand from 1 January 1900 as day 1: 126 years of 365 days, 31 leap days and the one that the form of
    // spreadsheets gives 1900, 59 days of January and February, and the first of March.
    expect([at(0, 1), at(0, 3)]).toEqual([{ value: 46082 }, { value: 46083 }]);
    const before = calculator.cellAt(0, 0, 1)?.formula?.workedOut;
    edit([0, 0, 2]);
    expect(calculator.cellAt(0, 0, 1)?.formula?.workedOut).toBe(before);
    vi.setSystemTime(new Date(2026, 2, 2, 0, 10));
    edit([0, 0, 3]);
    expect([at(0, 1), at(0, 3)]).toEqual([{ value: 46083 }, { value: 46084 }]);
  } finally {
    vi.useRealTimers();
  }
});

test("what calls for the day or a moving cell by a name follows as if it called itself", () => {
  vi.useFakeTimers({ toFake: ["Date"], now: new Date(2026, 2, 1, 23, 50) });
  try {
    const names = { Written: "TODAY()", Due: "Written+7", Moved: "OFFSET(Plan!$A$1,Plan!$B$1,0)" };
    const rows: Typed[][] = [[1, 0, "=Due", "=Moved", "=C1+1"], [20], [30]];
    calculator = new Calculator({ sheets: [typedSheet("Plan", rows)], names }, SAMPLES);
    calculator.calculateAll();
    // The first of March 2026 is day 46082, as above.
    expect([at(0, 2), at(0, 3), at(0, 4)]).toEqual([{ value: 46089 }, { value: 1 }, { value: 46090 }]);
    const before = calculator.cellAt(0, 0, 2)?.formula?.workedOut;
    edit([0, 0, 1.5], [0, 1, 2]);
    expect([at(0, 2), at(0, 3)]).toEqual([{ value: 46089 }, { value: 30 }]);
    expect(calculator.cellAt(0, 0, 2)?.formula?.workedOut).toBe(before);
    vi.setSystemTime(new Date(2026, 2, 2, 0, 10));
    edit([0, 0, 2]);
    expect([at(0, 2), at(0, 4)]).toEqual([{ value: 46090 }, { value: 46091 }]);
  } finally {
    vi.useRealTimers();
  }
});

test("what a formula fills grows, shrinks, is blocked and comes back, and its readers follow", () => {
  start([["=BLADE.SQUARES(D1)", undefined, "=SUM(A1:B9)", 2], [undefined], ["=1+1"]]);
  expect(calculator.fillsOf(0, 0, 0)).toMatchObject({ lastRow: 1, lastColumn: 1 });
  const two = at(0, 2);
  edit([0, 3, 3]);
  expect(at(0, 0)).toMatchObject({ error: "#SPILL!" });
  edit([2, 0, undefined]);
  expect(calculator.fillsOf(0, 0, 0)).toMatchObject({ lastRow: 2 });
  edit([1, 1, "in the way"]);
  expect(at(0, 0)).toMatchObject({ error: "#SPILL!" });
  edit([1, 1, undefined], [0, 3, 2]);
  expect(at(0, 2)).toEqual({ value: expect.closeTo((two as { value: number }).value - 2, 12) });
  expect(at(2, 0)).toBeUndefined();
});

test("a ring of formulas is an error in each of them, and over once it is cut", () => {
  start([["=B1+1", "=C1+1", "=A1+1", "=A1*2"]]);
  for (const column of [0, 1, 2, 3]) expect(at(0, column)).toMatchObject({ error: "#CYCLE!" });
  edit([0, 2, 5]);
  expect([0, 1, 3].map((column) => at(0, column))).toEqual([{ value: 7 }, { value: 6 }, { value: 14 }]);
});

test("a chain of ten thousand formulas needs no deep stack", () => {
  const length = 10_000;
  start(Array.from({ length }, (_, row) => [row === length - 1 ? 1 : `=A${row + 2}+1`]));
  expect(at(0, 0)).toEqual({ value: length });
  edit([length - 1, 0, 2]);
  expect(at(0, 0)).toEqual({ value: length + 1 });
});

const WIDTH = 4;
const HEIGHT = 5;
const nameAt = (index: number) => `${"ABCD"[index % WIDTH]}${Math.floor(index / WIDTH) + 1}`;

/** What may be typed into a cell: it reads cells before it alone, so that nothing runs in a ring. */
function typedAt(index: number): fc.Arbitrary<Typed> {
  const constant = fc.oneof(fc.constant<Typed>(undefined), fc.integer({ min: 0, max: 4 }));
  if (index === 0) return constant;
  const before = fc.nat(index - 1).map(nameAt);
  const row = Math.floor(index / WIDTH);
  return fc.oneof(
    constant,
    before.map((a) => `=${a}+1`),
    fc.tuple(before, before).map(([a, b]) => `=${a}&"-"&${b}`),
    fc.tuple(before, before).map(([a, b]) => `=IF(${a}>2,${b},0)`),
    fc.tuple(before, before, before).map(([a, b, c]) => `=IF(${a}>2,SUM($A$1:${b}),IF(${b}=1,"",${c}))`),
    fc.tuple(before, before, before).map(([a, b, c]) => `=IFERROR(${a}/${b},${c}&"!")`),
    before.map((a) => `=SUM($A$1:${a})`),
    fc.tuple(before, before).map(([a, b]) => `=IFERROR(INDEX($A$1:${a},1+(N(${b})>2),1),0)`),
    before.map((a) => (row === 0 ? "=1" : `=OFFSET($A$1,MIN(${row - 1},N(${a})),0)`)),
  );
}

/** Below the rest a table that grows and shrinks with a cell, and beside it what reads the cells it fills. */
const rest: Typed[][] = [
  ["=BLADE.SQUARES(MAX(1,MIN(4,N(B2))))"],
  [undefined],
  [undefined, undefined, "=SUM(A6:B10)", "=IF(N(B3)>2,SUM(A6:B10),N(B2))"],
];

const shown = (of: Calculator) =>
  Array.from({ length: HEIGHT + 6 }, (_, row) =>
    Array.from({ length: WIDTH }, (_x, column) => of.at(0, row, column)),
  );

test("after any edits every cell shows what a calculation from nothing gives", () => {
  const cells = fc.tuple(...Array.from({ length: WIDTH * HEIGHT }, (_, index) => typedAt(index)));
  const one = fc.nat(WIDTH * HEIGHT - 1).chain((index) => fc.tuple(fc.constant(index), typedAt(index)));
  const rows = (typed: readonly Typed[]) => [
    ...Array.from({ length: HEIGHT }, (_, row) => typed.slice(row * WIDTH, (row + 1) * WIDTH)),
    ...rest,
  ];
  fc.assert(
    fc.property(cells, fc.array(one, { minLength: 1, maxLength: 6 }), (typed, edits) => {
      calculator.dispose();
      start(rows(typed));
      const now = [...typed];
      for (const [index, text] of edits) {
        edit([Math.floor(index / WIDTH), index % WIDTH, text]);
        now[index] = text;
      }
      const edited = shown(calculator);
      calculator.dispose();
      start(rows(now));
      expect(edited).toEqual(shown(calculator));
    }),
    { numRuns: 40 },
  );
});

/** What a cell may hold that reads any other in its branches: some of that runs in a ring. */
function lookingAnywhere(index: number): fc.Arbitrary<Typed> {
  const any = fc.nat(WIDTH * HEIGHT - 1).map(nameAt);
  const before = fc.nat(Math.max(0, index - 1)).map(nameAt);
  return fc.oneof(
    fc.integer({ min: 0, max: 4 }),
    fc.tuple(any, any).map(([a, b]) => `=IF(N(${a})>2,1,N(${b}))`),
    fc.tuple(before, any).map(([a, b]) => `=IF(N(${a})>2,N(${b}),0)`),
    before.map((a) => (index === 0 ? 3 : `=SUM($A$1:${a})`)),
  );
}

const isRing = (cell: CellValue | undefined) =>
  cell !== undefined && "error" in cell && cell.error === "#CYCLE!";

test("formulas that name one another in a ring which none takes show what a calculation from nothing gives", () => {
  const cells = fc.tuple(...Array.from({ length: WIDTH * HEIGHT }, (_, index) => lookingAnywhere(index)));
  const one = fc.nat(WIDTH * HEIGHT - 1).chain((at) => fc.tuple(fc.constant(at), lookingAnywhere(at)));
  const rows = (typed: readonly Typed[]) =>
    Array.from({ length: HEIGHT }, (_, row) => typed.slice(row * WIDTH, (row + 1) * WIDTH));
  fc.assert(
    fc.property(cells, fc.array(one, { minLength: 1, maxLength: 6 }), (typed, edits) => {
      const now = [...typed];
      for (const [index, text] of edits) now[index] = text;
      calculator.dispose();
      start(rows(now));
      const fresh = shown(calculator);
      fc.pre(!fresh.flat().some(isRing));
      calculator.dispose();
      start(rows(typed));
      for (const [index, text] of edits) edit([Math.floor(index / WIDTH), index % WIDTH, text]);
      expect(shown(calculator)).toEqual(fresh);
    }),
    { numRuns: 60 },
  );
});

describe("the order in which dependents are worked out", () => {
  const SIDE = 8;
  /** How many formulas were worked out since the one that was worked out last before. */
  const workedOut = (rows: number) =>
    Math.max(
      ...Array.from({ length: rows * SIDE }, (_, at) => {
        const cell = calculator.cellAt(0, Math.floor(at / SIDE), at % SIDE);
        return cell?.formula?.workedOut ?? 0;
      }),
    );
  const named = (row: number, column: number) => `${"ABCDEFGH"[column]}${row + 1}`;
  /** Each cell adds up the ones above and before it: as many ways lead to a cell as Pascal's triangle says. */
  const sumAt = (row: number, column: number): Typed => {
    if (row + column === 0) return 1;
    const above = row > 0 ? `+${named(row - 1, column)}` : "";
    return `=0${above}${column > 0 ? `+${named(row, column - 1)}` : ""}`;
  };
  const lattice = (): Typed[][] =>
    Array.from({ length: SIDE }, (_, row) => Array.from({ length: SIDE }, (_x, at) => sumAt(row, at)));

  test("each once, after all that it reads, however many ways lead to it", () => {
    start(lattice());
    // Ways through a square of 8 × 8: the binomial coefficient of 14 over 7.
    expect(at(SIDE - 1, SIDE - 1)).toEqual({ value: 3432 });
    const before = workedOut(SIDE);
    edit([0, 0, 2]);
    expect(at(SIDE - 1, SIDE - 1)).toEqual({ value: 6864 });
    expect(workedOut(SIDE) - before).toBe(SIDE * SIDE - 1);
  });

  test("each once, where one way to a cell is longer than another", () => {
    start([[1, "=A1", "=B1", "=C1", "=A1+D1"]]);
    const before = workedOut(1);
    edit([0, 0, 2]);
    expect(at(0, 4)).toEqual({ value: 4 });
    expect(workedOut(1) - before).toBe(4);
  });

  test("each once, where a way became longer by a formula that was typed later", () => {
    start([[1, "=A1", "=B1", 7, "=A1+D1", "=E1"]]);
    calculator.prepare();
    edit([0, 3, "=C1"]);
    const before = workedOut(1);
    edit([0, 0, 2]);
    expect([at(0, 4), at(0, 5)]).toEqual([{ value: 4 }, { value: 4 }]);
    expect(workedOut(1) - before).toBe(5);
  });

  test("a formula that comes between later takes its place in it", () => {
    start([...lattice(), [1], ["=A9"], ["=A10"]]);
    edit([0, 0, "=A11"]);
    expect(at(SIDE - 1, SIDE - 1)).toEqual({ value: 3432 });
    const before = workedOut(SIDE + 3);
    edit([SIDE, 0, 3]);
    expect(at(SIDE - 1, SIDE - 1)).toEqual({ value: 10296 });
    expect(workedOut(SIDE + 3) - before).toBe(SIDE * SIDE + 2);
  });

  test("of a table that a formula fills, only what read a cell that became another", () => {
    start([
      [2, "=BLADE.SQUARES(A1+1)", undefined],
      [],
      [undefined, undefined, undefined, "=C1*10", "=C2*10"],
    ]);
    const read = () => [3, 4].map((column) => calculator.cellAt(0, 2, column)?.formula?.workedOut);
    const before = read();
    edit([0, 0, 3]);
    expect(at(3, 1)).toEqual({ value: 1 });
    expect(read()).toEqual(before);
  });

  test("a place that is not found is no reading of the cells it would have stood for", () => {
    start([
      ["a", 1, '=IFERROR(INDEX(B1:B2,MATCH("c",A1:A2,0)),"none")'],
      ["b", 2],
    ]);
    const before = calculator.cellAt(0, 0, 2)?.formula?.workedOut;
    edit([0, 1, 5]);
    expect(calculator.cellAt(0, 0, 2)?.formula?.workedOut).toBe(before);
    edit([1, 0, "c"]);
    expect(at(0, 2)).toEqual({ value: 2 });
    edit([1, 1, 7]);
    expect(at(0, 2)).toEqual({ value: 7 });
  });
});

test("a formula can be asked for its text, before and after it is changed", () => {
  start([["=1+1", "=FORMULATEXT(A1)"]]);
  expect(at(0, 1)).toEqual({ value: "=1+1" });
  edit([0, 0, "=2*2"]);
  expect(at(0, 1)).toEqual({ value: "=2*2" });
});

test("results that come with formulas are taken over, errors are worked out for their sentence, and edits follow", () => {
  const known = (formula: string, result: CellValue, more: object = {}): CellInput => ({
    formula,
    result,
    ...more,
  });
  const fills = { row: 0, column: 3, lastRow: 1, lastColumn: 4 };
  const filled = [
    [{ value: 0 }, { value: 0 }],
    [{ value: 70 }, { value: 80 }],
  ];
  const row: CellInput[] = [
    { value: 2 },
    known("=A1*2", { value: 400 }),
    known("=1/0", { error: "#DIV/0!" }),
    known("=BLADE.SQUARES(A1)", { value: 0 }, { fills, filled }),
  ];
  calculator.dispose();
  calculator = new Calculator(
    { sheets: [{ name: "Plan", rows: [row, [], [{ formula: "=E2+B1" }]] }] },
    SAMPLES,
  );
  const shown = calculator.calculateRest().map(({ row: r, column }) => `${r},${column}`);
  // The wrong value stands as long as nothing that it reads is touched: it was not worked out again.
  expect([at(0, 1), at(1, 4), at(2, 0)]).toEqual([{ value: 400 }, { value: 80 }, { value: 480 }]);
  expect(at(0, 2)).toMatchObject({ error: "#DIV/0!" });
  for (const place of ["0,3", "0,4", "1,3", "1,4", "2,0"]) expect(shown).toContain(place);
  edit([0, 0, 3]);
  expect(at(0, 1)).toEqual({ value: 6 });
  expect(calculator.fillsOf(0, 0, 3)).toMatchObject({ lastRow: 2, lastColumn: 4 });
  expect(at(2, 0)).toEqual({ value: 6 + (1 / 3) ** 2 });
});

test("cells that changed while a formula took its other branch are read once its condition turns to them", () => {
  start([
    [0, 1, "=IF(A1>0,SUM(B1:B2),9)", "=C1"],
    [undefined, 2],
  ]);
  edit([0, 1, 5]);
  expect(at(0, 3)).toEqual({ value: 9 });
  edit([0, 0, 1]);
  expect(at(0, 3)).toEqual({ value: 7 });
  edit([1, 1, 4]);
  expect([at(0, 2), at(0, 3)]).toEqual([{ value: 9 }, { value: 9 }]);
});

test("a look-up is worked out again for the cell that it chose, and none of the others in its column", () => {
  const lookUp = '=INDEX(B$1:B$4,MATCH(D1,A$1:A$4,0))&""';
  start([
    ["L1", "oak", "=B3", "L2", lookUp],
    ["L2", "ash"],
    ["L3", "elm"],
    ["L4", "=C1"],
  ]);
  const times = () => calculator.cellAt(0, 0, 4)?.formula?.workedOut;
  const before = times();
  edit([0, 1, "fir"]);
  expect(times()).toBe(before);
  edit([1, 1, "yew"]);
  expect(at(0, 4)).toEqual({ value: "yew" });
  // Another line, whose cell is a formula that follows two others.
  edit([0, 3, "L4"], [2, 1, "box"]);
  expect(at(0, 4)).toEqual({ value: "box" });
  edit([2, 1, "bay"]);
  expect(at(0, 4)).toEqual({ value: "bay" });
  edit([1, 0, "L4"], [3, 0, "L2"]);
  expect(at(0, 4)).toEqual({ value: "yew" });
});

test("what is chosen is followed in a formula of more than thirty references, each branch for itself", () => {
  const many = Array.from({ length: 40 }, (_, row) => `N(A${row + 1})`).join("+");
  const rows = Array.from({ length: 40 }, (_, row): Typed[] => [row]);
  start([[0, `=IF(C1=1,INDEX(A$1:A$40,39,1),${many})`, 1], ...rows.slice(1)]);
  const times = () => calculator.cellAt(0, 0, 1)?.formula?.workedOut;
  const before = times();
  edit([39, 0, 100]);
  expect([at(0, 1), times()]).toEqual([{ value: 38 }, before]);
  edit([38, 0, 5]);
  expect(at(0, 1)).toEqual({ value: 5 });
  edit([0, 2, 0]);
  // 0 + 1 + ... + 37, then 5 and 100.
  expect(at(0, 1)).toEqual({ value: 703 + 105 });
  edit([39, 0, 0]);
  expect(at(0, 1)).toEqual({ value: 708 });
});

test("SUMIF reads more than the cell that INDEX gives it", () => {
  start([
    ["a", 1, '=SUMIF(A1:A3,"a",INDEX(B1:B3,1))'],
    ["b", 2],
    ["a", 3],
  ]);
  // 1 and 3: the range to add up is as large as the one that is looked through (Excel's reference of SUMIF, from memory).
  expect(at(0, 2)).toEqual({ value: 4 });
  edit([2, 1, 10]);
  expect(at(0, 2)).toEqual({ value: 11 });
});
