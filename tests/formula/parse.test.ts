import { describe, expect, test } from "vitest";
import { type Expression, parseFormula } from "../../src/formula/parse";

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
    // References meet at a space, are taken together by a comma in brackets, and reach from one to another by a colon.
    ["=SUM(B2:C9 C1:D4,(A1,B2))", "SUM[(B2:C9   C1:D4), (A1 , B2)]"],
    ["=INDEX(A1:C9,1,2):C9", "(INDEX[A1:C9, 1, 2] : C9)"],
    ["=Plan!A1:Plan!B2", "Plan!A1:Plan!B2"],
    ["=SUM(A1#)", "SUM[A1#]"],
    ["=-A1:A3 A2", "((A1:A3   A2) sign)"],
    ["=[2]!_xldudf_BLADE_CARBON(A2)", "_XLDUDF_BLADE_CARBON[A2]"],
    [
      "=SUM([2]Plan!B2,'[Book.xlsx]Run 1'!A:A,Jan:Mar!B2)",
      "SUM[[2]Plan!B2, '[Book.xlsx]Run 1'!A:A, Jan:Mar!B2]",
    ],
    ["=[@Steel]", "[@Steel]"],
  ])("%s", (formula, expected) => {
    expect(read(formula)).toBe(expected);
  });

  test.each(['=BLADE.CARBON("1095"', "=1+", "=)", "text", "=", "=A1 B1 ~", '="open'])(
    "%s cannot be read",
    (formula) => {
      expect(read(formula)).toBeNull();
    },
  );
});
