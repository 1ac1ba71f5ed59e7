import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { NotAvailable, Refusal } from "../../src/core/refusal";
import { findSteel } from "../../src/core/steel/find";
import { allGrades } from "../../src/core/steel/grades";
import { gradesNamed, nameIndex } from "../../src/core/steel/names";
import type { Grade } from "../../src/core/steel/steel";

function refusalOf(given: string | number): Refusal {
  try {
    findSteel(given);
  } catch (thrown) {
    if (thrown instanceof Refusal) return thrown;
    throw thrown;
  }
  throw new Error(`${given} was accepted`);
}

/** Names that two standards print: GB/T 699 and GOST 1050 or 14959; GB/T 1299 and ASTM A600. */
const SHARED = ["45", "60", "65", "70", "T8"];

/** UNS numbers of carbon classes name the whole grade: T72301 is W1, not W1-8. */
function ownNames(grade: Grade): string[] {
  const isClass = /^(W1-|M2 \()/.test(grade.designation);
  return [grade.designation, ...grade.aliases, isClass ? "" : grade.uns, grade.enNumber].filter(
    (name) => name !== "" && !SHARED.includes(name),
  );
}

const named = allGrades().flatMap((grade) => ownNames(grade).map((name) => ({ name, grade })));

interface Typing {
  readonly lower: boolean;
  readonly wide: boolean;
  readonly breaks: readonly (readonly [at: number, mark: string])[];
}

/** A hyphen between digits means something in a name that prints one there (W1-8), so none is added to those. */
function mayBreak(name: string, at: number): boolean {
  const betweenDigits = /^\d\d$/.test(name.slice(at - 1, at + 1));
  return at < name.length && !(betweenDigits && /\d[-. ]\d/.test(name));
}

function widened(character: string): string {
  return /[0-9A-Za-z]/.test(character) ? String.fromCharCode(character.charCodeAt(0) + 0xfee0) : character;
}

function mistyped(name: string, { lower, wide, breaks }: Typing): string {
  const characters = [...(lower ? name.toLowerCase() : name)].map((each) => (wide ? widened(each) : each));
  for (const [at, mark] of breaks) {
    if (mayBreak(name, at)) characters[at] = mark + characters[at];
  }
  return characters.join("");
}

describe("names", () => {
  it("belong to one grade only, whatever alphabet they are written in", () => {
    const shared = [...nameIndex()].filter(([, grades]) => grades.length > 1);
    expect(shared.map(([key]) => key).sort()).toEqual(SHARED);
  });

  it("find their grade as printed", () => {
    for (const { name, grade } of named) expect(findSteel(name).grade, name).toBe(grade);
  });

  it("find their grade in any case, with spaces, hyphens and full-width characters mixed in", () => {
    const typings = fc.record({
      which: fc.nat(named.length - 1),
      lower: fc.boolean(),
      wide: fc.boolean(),
      breaks: fc.array(fc.tuple(fc.nat(20), fc.constantFrom(" ", "-", "‑", "\u00a0")), { maxLength: 3 }),
    });
    fc.assert(
      fc.property(typings, ({ which, ...typing }) => {
        const { name, grade } = named[which] ?? { name: "", grade: null };
        const typed = mistyped(name, typing);
        expect(gradesNamed(typed), typed).toEqual([grade]);
      }),
      { numRuns: 2000, seed: 7 },
    );
  });

  it.each([
    [1095, "1095"],
    [52100, "52100"],
    [1.251, "100MnCrW4"],
    [1.208, "X210Cr12"],
    [1.4116, "X50CrMoV15"],
    ["1,2510", "100MnCrW4"],
    ["W.-Nr. 1.2842", "90MnCrV8"],
    ["DIN EN 1.4034", "X46Cr13"],
    ["AISI/SAE 1095", "1095"],
    ["UNS T30402", "D2"],
    ["UNS G52986", "52100"],
    ["T72301", "W1"],
    ["S44003", "440B"],
    ["E52100", "52100"],
    ["51440C", "440C"],
    ["30304", "304"],
    ["15N20", "75Ni8"],
    ["Ck75", "C75S"],
    ["51CrV4 +QT", "51CrV4"],
    ["X40CrMoV51", "X40CrMoV5-1"],
    ["S 6-5-2", "HS6-5-2C"],
    ["SK5", "SK85"],
    ["SKH9", "SKH51"],
    ["9Cr18Mo", "102Cr17Mo"],
    ["3Cr13", "30Cr13"],
    ["45#", "GB 45"],
    ["GB/T 45", "GB 45"],
    ["GOST 60", "GOST 60"],
    ["GB T8", "GB T8"],
    ["T8A", "GB T8"],
    ["AISI T8", "AISI T8"],
    ["T12008", "AISI T8"],
    ["ГОСТ 45", "GOST 45"],
    ["65G", "65Г"],
    ["Y8", "У8"],
    ["9XC", "9ХС"],
    ["P6M5", "Р6М5"],
    ["50KhFA", "50ХФА"],
    ["50HFA", "50ХФА"],
    ["4Х13", "40Х13"],
    ["С75S", "C75S"], // Cyrillic С
    ["440С", "440C"], // Cyrillic С
    ["О1", "O1"], // Cyrillic О
  ])("%s is %s", (given, designation) => {
    expect(findSteel(given).name).toBe(designation);
  });

  it("that look alike stay apart", () => {
    expect(refusalOf("W18").code).toBe("#N/A"); // short for W18Cr4V in talk, and not W1-8
    expect(refusalOf("H12").message).toContain("H13"); // hot work, not Х12
    expect(refusalOf("652")).toBeInstanceOf(NotAvailable); // not 6-5-2
    expect(refusalOf("EN45").code).toBe("#N/A"); // an old spring steel name, neither GB 45 nor C45
    expect(findSteel("1.2825").name).not.toBe(findSteel("1.2510").name);
    expect(findSteel("L6").name).not.toBe(findSteel("1.2714").name);
  });

  it("shared by two standards are asked about", () => {
    expect(refusalOf("45").message).toBe(
      '"45" is the name of GB 45 (GB/T 699-2015) and of GOST 45 (GOST 1050-88): write "GB 45" or "GOST 45"',
    );
    expect(refusalOf("T8").message).toContain("AISI T8 (ASTM A600)");
    expect(refusalOf("T8").message).toContain("GB T8 (GB/T 1299-2014");
    for (const number of [60, 65, 70])
      expect(refusalOf(number).message).toContain(`"GB ${number}" or "GOST ${number}"`);
  });

  it("unknown give the nearest designations and never a guess", () => {
    expect(refusalOf("1094").message).toContain("nearest designations: 1095, 1090, 1084");
    expect(refusalOf("01").message).toContain("O1");
    expect(refusalOf("440").message).toContain("440A, 440B, 440C");
    expect(refusalOf("5160H").message).toContain("5160");
    expect(refusalOf(1.4117).message).toContain("1.4116 X50CrMoV15");
    expect(refusalOf("420HC").code).toBe("#N/A");
    expect(refusalOf("8Cr13MoV").code).toBe("#N/A");
    expect(refusalOf("Damascus").message).toContain("nothing in the grade table is spelt like it");
  });

  it("empty or no name at all are malformed", () => {
    expect(refusalOf("").message).toContain("put the grade in quotes");
    for (const given of [0, -5, 60.5, Number.NaN, 1, "x".repeat(500)])
      expect(refusalOf(given).code).toBe("#VALUE!");
  });

  it("give the same object and the same refusal each time", () => {
    expect(findSteel("C 75 S")).toBe(findSteel("c75s"));
    expect(refusalOf("1094")).toBe(refusalOf("1094"));
  });

  it("of any text whatever end in a steel or a sentence", () => {
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: "grapheme" }), fc.double()), (given) => {
        try {
          expect(findSteel(given).name).not.toBe("");
        } catch (thrown) {
          expect(thrown).toBeInstanceOf(Refusal);
        }
      }),
      { numRuns: 1000 },
    );
  });
});
