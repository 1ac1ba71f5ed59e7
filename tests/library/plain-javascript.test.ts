import { describe, expect, test } from "vitest";
import * as core from "../../src/core";
import { ROOT, readEntries } from "./public-types";

// What a program without types hands over comes to an answer or to a sentence, never to a fault of the machine. House rule.

const { findSteel, findGrind, findQuench, findUse, Refusal } = core;

describe("names stand for what they name", () => {
  const steel = findSteel("1095");
  const grade = core.listGrades({ contains: "1095" }).find(({ designation }) => designation === "1095");

  test("a steel by its designation, by the number of one, or as a grade of the list", () => {
    expect(core.temperedHardness("1095", 205)).toBe(
      core.temperedHardness(steel, 205, { hours: 2, cycles: 1 }),
    );
    expect(core.carbonOf(1095)).toBe(0.95);
    expect(grade && core.temperPlan(grade, 60)).toEqual(core.temperPlan(steel, 60, {}));
  });

  test("a grind, a quench and a use by a word", () => {
    const blade = { length: 200, width: 30, thickness: 3 };
    expect(core.taperedBlade({ ...blade, grind: "flat" }, 7.85)).toEqual(
      core.taperedBlade({ ...blade, grind: findGrind("flat") }, 7.85),
    );
    const hollow = { grind: "hollow", width: 30, thickness: 5, curve: 300 };
    expect(core.sectionArea(hollow)).toBe(core.sectionArea({ ...hollow, grind: findGrind("hollow") }));
    expect(core.maxSection(steel, findQuench("fast oil"))).toEqual(core.maxSection("1095", "fast oil"));
    const use = findUse("Machete light");
    const quench = findQuench("fast oil");
    expect(
      core.bladeStory({ steel: "1095", use: "Machete light", quench: "fast oil", thickness: 3 }),
    ).toEqual(core.bladeStory({ steel, use, quench, thickness: 3, treatment: {} }));
    const offered = [{ steel }];
    expect(core.steelsFor({ use: "Machete light", quench: "fast oil" }, offered)).toEqual(
      core.steelsFor({ use, quench }, offered),
    );
    expect(core.tradeOff("Machete light", "1095", [55])).toEqual(core.tradeOff(use, steel, [55], {}));
    expect(core.bandTemper({ use: "Machete light", steel: "1095" })).toEqual(
      core.bandTemper({ use, steel, treatment: {}, lower: 0 }),
    );
  });

  test("what is left out is taken as the worksheet functions take it", () => {
    // STARTS(24, 0.92) of README.
    expect(core.startsNeeded(24, 0.92)).toBe(28);
    expect(core.listGrades().length).toBeGreaterThan(100);
  });
});

const [entry] = readEntries(["src/core/index.ts"]);

/** Functions whose first argument is a steel. */
const ofSteel = [...(entry?.shown ?? [])].flatMap(([name, symbol]) => {
  const declaration = symbol.valueDeclaration;
  const first = declaration && /^export function \w+\(\s*(\w+): SteelAsked/.exec(declaration.getText());
  return first ? [name] : [];
});

test("every function that begins with a steel takes its name, and refuses what is none with a sentence", () => {
  expect(ofSteel.length).toBeGreaterThan(25);
  const ask = (name: string, given: unknown) => {
    try {
      return (core as unknown as Record<string, (steel: unknown) => unknown>)[name]?.(given);
    } catch (thrown) {
      return thrown;
    }
  };
  for (const name of ofSteel) {
    for (const given of [undefined, null, true, "no such steel 9999", ""]) {
      expect(ask(name, given), `${name}(${given})`).toBeInstanceOf(Refusal);
    }
  }
});

test("no function that is shown asks for a steel without taking its name", () => {
  const strict = [...(entry?.shown ?? [])].filter(([, symbol]) => {
    const text = symbol.valueDeclaration?.getSourceFile().fileName.startsWith(ROOT)
      ? symbol.valueDeclaration.getText()
      : "";
    return /^export function \w+\([^{]*?\b\w+: Steel\b/.test(text);
  });
  expect(strict.map(([name]) => name)).toEqual([]);
});

test("tables that are shared cannot be altered", () => {
  const tables = { USES: core.USES, GRINDS: core.GRINDS, SCALES: core.SCALES, MEDIA: core.QUENCH_MEDIA };
  for (const [name, table] of Object.entries({ ...tables, CONVERSIONS: core.CONVERSION_TABLES })) {
    expect(Object.isFrozen(table), name).toBe(true);
    for (const record of table)
      expect(Object.isFrozen(record) && Object.isFrozen(record.aliases), name).toBe(true);
  }
  expect(() => Object.assign(core.USES[0] as object, { low: 1 })).toThrow(TypeError);
});

test("a refusal says of what kind it is", () => {
  expect(new core.InvalidValue("")).toMatchObject({ name: "InvalidValue", code: "#VALUE!" });
  expect(String(new core.NotAvailable("no such grade"))).toBe("NotAvailable: no such grade");
});
