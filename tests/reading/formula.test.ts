import { describe, expect, test } from "vitest";
import { type Expression, parseFormula } from "../../src/formula/parse";
import { cellsOf, ownCalls, referencesIn } from "../../src/taskpane/cell/values";

/** The parts of a formula in brackets, the way they bind. */
function shape(part: Expression): string {
  if (part.kind === "operation")
    return `(${part.given.map(shape).join(` ${part.operator} `)}${part.given.length === 1 ? ` ${part.operator}` : ""})`;
  if (part.kind === "call") return `${part.name}[${part.given.map(shape).join(", ")}]`;
  if (part.kind === "array") return `{${part.rows.map((row) => row.map(shape).join(",")).join(";")}}`;
  return part.kind === "nothing" ? "–" : part.text;
}

const read = (formula: string) => {
  const found = parseFormula(formula);
  return found === null ? null : shape(found);
};

/** Grammar and precedence: ECMA-376 Part 1, 18.17.2 (formulas: syntax) and 18.17.2.2 (operators). */
describe("a formula taken apart", () => {
  test.each([
    ['=BLADE.TEMPERED_HRC("1095",200,,2)', 'BLADE.TEMPERED_HRC["1095", 200, –, 2]'],
    ["=BLADE.CARBON('Run plan'!$B$7)", "BLADE.CARBON['Run plan'!$B$7]"],
    ["='Smith''s steels'!A1&\" in\"", "('Smith''s steels'!A1 & \" in\")"],
    ["=1+2*3^2-4", "((1 + (2 * (3 ^ 2))) - 4)"],
    // A sign binds stronger than a power in spreadsheets: -2^2 is 4.
    ["=-2^2", "((2 sign) ^ 2)"],
    ["=B2*5%", "(B2 * (5 %))"],
    ['=IF(A2>=58,"hard, ""very""",)', 'IF[(A2 >= 58), "hard, ""very""", –]'],
    ['={"1095","0,8";2,-3.5e2}', '{"1095","0,8";2,(3.5e2 sign)}'],
    ["=SUM(A:A, 3:5, B2:C9)", "SUM[A:A, 3:5, B2:C9]"],
    ["=SUM(Lines[[#This Row],[Temper C]], Kerf)", "SUM[Lines[[#This Row],[Temper C]], Kerf]"],
    ["=IFERROR(1/0,#N/A)", "IFERROR[(1 / 0), #N/A]"],
    ["=TRUE", "TRUE"],
    ["=VERSION()", "VERSION[]"],
  ])("%s", (formula, expected) => {
    expect(read(formula)).toBe(expected);
  });

  test.each(['=BLADE.CARBON("1095"', "=1+", "=)", "text", "=", "=A1 B1 ~", '="open'])(
    "%s cannot be read",
    (formula) => {
      expect(read(formula)).toBeNull();
    },
  );

  test("the text of each part is what stands in the formula", () => {
    const [outer, inner] = ownCalls(
      parseFormula('=ROUND( BLADE.CARBON( "1095" ) + BLADE.CARBON(A2) ,1)') ?? never(),
    );
    expect(outer?.text).toBe('BLADE.CARBON( "1095" )');
    expect(inner?.text).toBe("BLADE.CARBON(A2)");
    expect([outer?.isWhole, inner?.isWhole]).toEqual([false, false]);
  });

  test("references are found once each", () => {
    expect(referencesIn(parseFormula("=BLADE.CARBON(A2)+SUM(A2,Plan!B1:B3,Kerf)") ?? never())).toEqual([
      "A2",
      "Plan!B1:B3",
      "Kerf",
    ]);
  });
});

describe("what a part comes to", () => {
  const known = new Map([
    ["A1", [[400]]],
    ["B1:B2", [[1], ["2"]]],
    ["C1", [[null]]],
    ["D1", [[{ type: "Error" as const, basicValue: "#N/A" }]]],
    ["E1", null],
  ]);
  const value = (formula: string) => cellsOf(parseFormula(formula) ?? never(), known);

  test.each([
    ['=A1&" F"', [["400 F"]]],
    ["=B1:B2*2", [[2], [4]]],
    ["=-A1/4", [[-100]]],
    ["=C1+1", [[1]]],
    ["=50%", [[0.5]]],
  ])("%s", (formula, expected) => {
    expect(value(formula)).toEqual(expected);
  });

  test("an error in a cell stays one, with a sentence", () => {
    expect(value("=D1+1")?.[0]?.[0]).toMatchObject({
      code: "#N/A",
      message: expect.stringContaining("mend that cell"),
    });
    expect(value("=1/C1")?.[0]?.[0]).toMatchObject({ code: "#VALUE!" });
    expect(value('=A1+"hot"')?.[0]?.[0]).toMatchObject({ code: "#VALUE!" });
  });

  test("what only the sheet knows is not guessed", () => {
    for (const formula of ["=XLOOKUP(A1,B1:B2,B1:B2)", "=E1", "=E1*2", "=Z9", "=A1>3", "=BLADE.CARBON(E1)"])
      expect(value(formula), formula).toBeNull();
  });

  // SAE numbering: the last two digits are hundredths of a per cent of carbon.
  test("our own functions are worked out", () => {
    expect(value('=BLADE.CARBON("1095")*100')?.[0]?.[0]).toBeCloseTo(95, 9);
    expect(value("=BLADE.CARBON(A1)")?.[0]?.[0]).toMatchObject({ code: "#N/A" });
  });
});

function never(): never {
  throw new Error("the formula was not read");
}
