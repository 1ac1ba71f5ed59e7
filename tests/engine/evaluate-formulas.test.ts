import { describe, expect, it } from "vitest";
import type { CellValue } from "../../src/engine/cell-value";
import { evaluateFormulas } from "../../src/engine/evaluate-formulas";

import { SAMPLES } from "./sample-functions";

// Expected figures are plain arithmetic; the meaning of blanks, error values and broadcasting is that of ECMA-376
// Part 1, 18.17 (SpreadsheetML formulas).

async function cells(formula: string): Promise<readonly (readonly CellValue[])[]> {
  const [answer] = await evaluateFormulas([formula], SAMPLES);
  return answer?.rows ?? [];
}

async function values(formula: string): Promise<unknown[][]> {
  return (await cells(formula)).map((row) => row.map((cell) => ("error" in cell ? cell.error : cell.value)));
}

async function message(formula: string): Promise<string> {
  const cell = (await cells(formula))[0]?.[0];
  return cell !== undefined && "error" in cell ? `${cell.error} ${cell.message}` : "no error";
}

describe("a worksheet function in a formula", () => {
  it("answers in full precision", async () => {
    expect(await values("=BLADE.PRODUCT_THIRD(1,1,1)")).toEqual([[1 / 3]]);
  });

  it("is found in any case, with or without the equals sign", async () => {
    expect(await values("blade.product_third(7,1,1)")).toEqual([[7 / 3]]);
    expect(await values(" =Blade.Product_Third(7, 1, 1) ")).toEqual([[7 / 3]]);
  });

  it("takes an argument left out in the middle, or a blank cell, as its default", async () => {
    expect(await values("=BLADE.PRODUCT_THIRD(2,,5)")).toEqual([[10 / 3]]);
    expect(await values("=BLADE.PRODUCT_THIRD(2,B7,5)")).toEqual([[10 / 3]]);
  });

  it("says so where a required cell is blank", async () => {
    expect(await message("=BLADE.PRODUCT_THIRD(A1,2)")).toMatch(/^#VALUE! width is empty/);
  });

  it("works beside and inside built-in functions", async () => {
    expect(await values("=ROUND(BLADE.PRODUCT_THIRD(2,1,1),2)")).toEqual([[0.67]]);
    expect(await values("=LET(x,BLADE.PRODUCT_THIRD(3,1,1),x+1)")).toEqual([[2]]);
    expect(await values("=MAP({3;6},LAMBDA(w,BLADE.PRODUCT_THIRD(w,1,1)))")).toEqual([[1], [2]]);
    expect(await values("=INDEX(BLADE.SQUARES(4),4,2)")).toEqual([[1]]);
    expect(await values("=SUM(BLADE.SQUARES(4))")).toEqual([[2 + 14 / 9]]);
  });
});

describe("texts", () => {
  it.each(["0,8", "a;b", 'say ""oak""', "3/16", "5%", "1e3", "TRUE", "2024-01-01"])(
    "arrive as typed: %s",
    async (typed) => {
      const plain = typed.replaceAll('""', '"');
      expect(await message(`=BLADE.WOOD("${typed}")`)).toContain(`no wood is called "${plain}"`);
      expect(await message(`=BLADE.WOOD({"${typed}","oak"})`)).toContain(`no wood is called "${plain}"`);
    },
  );

  it("stand whole in an array constant", async () => {
    expect(await values('={"a,b",1;"c;d",TRUE}')).toEqual([
      ["a,b", 1],
      ["c;d", true],
    ]);
  });
});

describe("a result of many cells", () => {
  it("keeps the full precision of every cell, also through an outer formula", async () => {
    const thirds = [0, 1, 2].map((i) => [i / 3, (i / 3) ** 2]);
    expect(await values("=BLADE.SQUARES(3)")).toEqual(thirds);
    expect(await values("=BLADE.SQUARES(3)*2")).toEqual(thirds.map((row) => row.map((x) => x * 2)));
  });

  it("carries an error with its sentence in the place it belongs to", async () => {
    const rows = await cells('=BLADE.WOOD({"oak";"elm";"ash"})');
    expect(rows[0]).toEqual([{ value: 1 / 7 }, { value: "oak" }, { value: 1 / 9 }]);
    expect(rows[1]?.[0]).toEqual({
      error: "#N/A",
      message: 'wood: no wood is called "elm"; nearest: oak, ash',
    });
    expect(rows[1]?.[1]).toEqual({ value: "" });
    expect(rows[2]).toEqual([{ value: 1 / 7 }, { value: "ash" }, { value: 1 / 9 }]);
  });

  it("does not get in the way of the next formula", async () => {
    const answers = await evaluateFormulas(["=BLADE.SQUARES(50)", "=BLADE.SQUARES(2)", "=1"], SAMPLES);
    expect(answers.map(({ rows }) => rows.length)).toEqual([50, 2, 1]);
  });
});

describe("an error", () => {
  it.each([
    '=BLADE.WOOD("elm")',
    '=BLADE.WOOD("elm")*2',
    '=INDEX(BLADE.WOOD("elm"),1,1)&" mm"',
    '=ROUND(INDEX(BLADE.WOOD("elm"),1,1),1)',
    '=SUM(1,BLADE.WOOD("elm"))',
    '=BLADE.PRODUCT_THIRD(INDEX(BLADE.WOOD("elm"),1,1))',
    '=IF(TRUE,INDEX(BLADE.WOOD("elm"),1,1),0)',
  ])("keeps its sentence on its way through %s", async (formula) => {
    expect(await message(formula)).toBe('#N/A wood: no wood is called "elm"; nearest: oak, ash');
  });

  it("can be caught", async () => {
    expect(await values('=IFERROR(BLADE.PRODUCT_THIRD(-1),"caught")')).toEqual([["caught"]]);
    expect(await values('=IFNA(INDEX(BLADE.WOOD("elm"),1,1),0)')).toEqual([[0]]);
  });

  it("of another function in an argument is pointed out", async () => {
    expect(await message("=BLADE.PRODUCT_THIRD(1/0)")).toMatch(/^#VALUE! .*holds #DIV\/0!/);
    expect(await message("=BLADE.PRODUCT_THIRD(NA())")).toMatch(/^#N\/A .*holds #N\/A/);
  });

  it("of a function's own fault is one error value, and the formulas around it answer", async () => {
    const formulas = ["=1+1", "=BLADE.FAULTY(1)", "=BLADE.PRODUCT_THIRD(3,1,1)"];
    const answers = await evaluateFormulas(formulas, SAMPLES);
    expect(answers.map(({ rows }) => rows[0]?.[0])).toEqual([
      { value: 2 },
      { error: "#VALUE!", message: expect.stringContaining("no such table") },
      { value: 1 },
    ]);
  });
});

describe("a formula that cannot be right", () => {
  it("names an unknown function and the near ones", async () => {
    expect(await message('=BLADE.WODO("oak")')).toBe(
      "#NAME? no function is called BLADE.WODO; near: BLADE.WOOD",
    );
    expect(await message("=ROUNT(1.5)")).toMatch(/no function is called ROUNT; near: .*ROUND/);
    expect(await message("=IF(1,QQXYZZY(2),0)")).toBe("#NAME? no function is called QQXYZZY");
  });

  it("asks for quotes where a grade is typed without them", async () => {
    expect(await message("=BLADE.WOOD(80CrV2)")).toMatch(/^#NAME\? .*in double quotes/);
  });

  it("asks for quotes where a grade without them is the address of an empty cell", async () => {
    expect(await message("=BLADE.WOOD($O$1)")).toMatch(/^#VALUE! O1 is read as the address of a cell.*"O1"$/);
    expect(await values('=BLADE.WOOD("oak")&D2')).toEqual([expect.arrayContaining(["oak"])]);
  });

  it.each(["=1+", "=(1", '="a', "=)", "=BLADE.WOOD("])("cannot be read: %s", async (formula) => {
    expect(await message(formula)).toMatch(/^#VALUE! the formula cannot be read/);
  });

  it("with too many arguments says how many there are", async () => {
    expect(await message("=BLADE.PRODUCT_THIRD(1,2,3,4)")).toMatch(/3 arguments at most, 4 were given/);
  });
});

it("shows an empty cell as 0 and a blank line as nothing", async () => {
  expect(await values("=A1")).toEqual([[0]]);
  expect(await values("")).toEqual([[""]]);
});

it("knows true from 1", async () => {
  expect(await values("=1<2")).toEqual([[true]]);
  expect(await values("={TRUE,1}")).toEqual([[true, 1]]);
});
