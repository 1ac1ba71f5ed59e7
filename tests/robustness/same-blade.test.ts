import { beforeAll, describe, expect, test } from "vitest";
import { catalogue, functionNamed } from "../../src/functions/catalogue";
import { evaluate } from "../../src/functions/evaluate";
import { plan } from "../run/run";
import { Answers, askedOf, BLADES, type Blade, bladesFrom, number, told } from "./blades/blade";
import { NOT_OF_A_BLADE } from "./blades/not-of-a-blade";
import { BLADE_RULES, heldAgainst } from "./blades/rules";
import { STEEL_RULES } from "./blades/steel-rules";
import type { Asked } from "./relations/mechanism";

// Every function that is asked about a blade is asked about the same 1,000 blades, drawn from a fixed seed: no source
// is needed to say that two answers about one blade may not contradict each other.

const SEED = 20261129;
const blades = bladesFrom(SEED, BLADES);
/** `npm run fuzz -- --blades=1000` holds all of them against every rule. */
const SAMPLE = 300;

/** The one row that a function gives for arguments by name. */
const ask = (name: string, asked: Asked): readonly unknown[] => Object.values(told(name, asked));

/** Blades for which a contradiction was found, the first few of them with what was told. */
function contradictions(find: (blade: Blade, row: number) => string | undefined): string[] {
  return blades.flatMap((blade, row) => {
    const found = find(blade, row);
    return found === undefined ? [] : [`${JSON.stringify(blade)}: ${found}`];
  });
}

let planned: readonly Record<string, unknown>[] = [];
const treatments: Readonly<Record<string, unknown>>[] = [];

beforeAll(() => {
  const lines = blades.map(({ steel, use, quench, length, width, thickness, target }) => ({
    ...{ steel, use, quench, length, width, thickness, "target HRC": target, good: 4, yield: 0.9 },
  }));
  planned = plan(lines);
  for (const { steel, use, quench, length, thickness, target } of blades)
    treatments.push(told("TREATMENT", { steel, use, quench, length, thickness, target }));
});

/** How many blades a rule could be asked of: one that is never met would prove nothing. */
function met(asked: number, found: readonly string[], least: number): void {
  expect(found.slice(0, 5)).toEqual([]);
  expect(asked).toBeGreaterThanOrEqual(least);
}

describe("what is told of hardening, temper, band and status", () => {
  const sample = blades.slice(0, SAMPLE).map((blade) => new Answers(blade));

  test.each([...BLADE_RULES, ...STEEL_RULES])("$says", (rule) => {
    const { asked, contradictions } = heldAgainst(rule, sample);
    met(asked, contradictions, rule.share * SAMPLE);
  });
});

describe("RUN_PLAN, TREATMENT, RECIPE and TEMPER_PLAN say the same of one blade", () => {
  const SHARED = ["band status", "temper C", "temper F", "HRC low", "HRC high", "through-hardens", "tempers"];

  test("RUN_PLAN and TREATMENT", () => {
    let asked = 0;
    const found = contradictions((_, row) => {
      const [line = {}, alone = {}] = [planned[row], treatments[row]];
      // What RUN_PLAN leaves empty TREATMENT says in words; a line that is refused whole has no starts.
      const other = SHARED.find((label) => {
        const [one, two] = [line[label], alone[label]];
        if (one === "" || typeof line.starts !== "number") return false;
        asked += 1;
        return one !== two;
      });
      return other && `${other}: RUN_PLAN ${line[other]}, TREATMENT ${alone[other]}`;
    });
    met(asked, found, 3000);
  });

  test("RECIPE names the temper of TREATMENT where neither use nor section decides", () => {
    let asked = 0;
    const found = contradictions(({ steel, quench, target }) => {
      const [recipe] = ask("RECIPE", { steel, quench, target });
      const { recipe: same, "temper C": temperC } = told("TREATMENT", { steel, quench, target });
      if (typeof recipe !== "string" || recipe.startsWith("#") || number(temperC) === undefined)
        return undefined;
      asked += 1;
      return recipe === same ? undefined : `RECIPE ${recipe}, TREATMENT ${same}`;
    });
    met(asked, found, 200);
  });

  test("TEMPER_PLAN aims where TREATMENT does", () => {
    let asked = 0;
    const found = contradictions(({ steel, target }) => {
      const aim = number(told("TEMPER_PLAN", { steel, targetHrc: target }).likely);
      const temper = number(told("TREATMENT", { steel, target })["temper C"]);
      if (aim === undefined || temper === undefined) return undefined;
      asked += 1;
      return Math.abs(aim - temper) <= 1 ? undefined : `TEMPER_PLAN ${aim}, TREATMENT ${temper}`;
    });
    met(asked, found, 200);
  });
});

/** What TEMPER_PLAN says of a target beyond the usual tempers, but within the error. */
const AT_AN_END: readonly string[] = ["at the limit", "below usual temper"];

describe("hardness", () => {
  test("as quenched is never under tempered", () => {
    let asked = 0;
    const found = contradictions(({ steel, temperC }) => {
      const quenched = number(ask("QUENCHED_HRC", { steel })[0]);
      const tempered = number(ask("TEMPERED_HRC", { steel, temperC })[0]);
      if (quenched === undefined || tempered === undefined) return undefined;
      asked += 1;
      return quenched >= tempered - 1e-9
        ? undefined
        : `as quenched ${quenched}, at ${temperC} °C ${tempered}`;
    });
    met(asked, found, 100);
  });

  test("the likely hardness of TEMPERED_RANGE is TEMPERED_HRC in whole HRC, and lies in its band", () => {
    let asked = 0;
    const found = contradictions(({ steel, temperC }) => {
      const hrc = number(ask("TEMPERED_HRC", { steel, temperC })[0]);
      const { low, likely, high } = told("TEMPERED_RANGE", { steel, temper: temperC });
      if (hrc === undefined || typeof likely !== "number") return undefined;
      asked += 1;
      const isIn = (low as number) <= likely && likely <= (high as number);
      return Math.abs(hrc - likely) <= 0.5 + 1e-9 && isIn ? undefined : `${hrc}; ${low} ${likely} ${high}`;
    });
    met(asked, found, 150);
  });

  // Secondary hardening begins where the fitted curves turn: that of 440B from 300 °C on, that of H13 from 380 °C on.
  test("a hotter temper is never harder below the range of secondary hardening, nor a longer one", () => {
    let asked = 0;
    const found = contradictions(({ steel, temperC }) => {
      const cooler = Math.min(temperC, 260);
      const at = (celsius: number, hours: number) =>
        number(ask("TEMPERED_HRC", { steel, temperC: celsius, hours })[0]);
      const [first, hotter, longer] = [at(cooler, 2), at(cooler + 20, 2), at(cooler, 4)];
      if (first === undefined) return undefined;
      asked += 1;
      const isHarder = (other: number | undefined) => other !== undefined && other > first + 1e-9;
      return isHarder(hotter) || isHarder(longer)
        ? `${cooler} °C: ${first}, ${hotter} hotter, ${longer} longer`
        : undefined;
    });
    met(asked, found, 200);
  });

  test("a thicker blade never hardens through where a thinner one does not", () => {
    const RANK = ["does not harden", "does not harden through", "marginal", "hardens through"];
    let asked = 0;
    const found = contradictions(({ steel, quench, thickness }) => {
      const word = (mm: number) =>
        String(told("TREATMENT", { steel, quench, thickness: mm })["through-hardens"]);
      const [thin, thick] = [word(thickness), word(thickness * 2)];
      if (!RANK.includes(thin) || !RANK.includes(thick)) return undefined;
      asked += 1;
      return RANK.indexOf(thick) <= RANK.indexOf(thin)
        ? undefined
        : `${thickness} mm ${thin}, twice as thick ${thick}`;
    });
    met(asked, found, 100);
  });

  test("TEMPER_FOR and TEMPERED_HRC are inverse", () => {
    let asked = 0;
    const found = contradictions(({ steel, target }) => {
      const celsius = number(ask("TEMPER_FOR", { steel, targetHrc: target })[0]);
      // At either end of what a steel can have the nearest usual temper is told, which the plan says beside it.
      const { flag } = told("TEMPER_PLAN", { steel, targetHrc: target });
      if (celsius === undefined || AT_AN_END.includes(String(flag))) return undefined;
      asked += 1;
      const back = ask("TEMPERED_HRC", { steel, temperC: celsius })[0];
      return Math.abs(Number(back) - target) < 0.06
        ? undefined
        : `${celsius} °C gives ${back}, ${target} asked`;
    });
    met(asked, found, 150);
  });
});

describe("shape", () => {
  test("MASS is the mass of STATIONS for the same blade, and in proportion to length", () => {
    const found = contradictions(({ steel, length, width, thickness }) => {
      const mass = number(ask("MASS", { length, width, thickness, density: steel })[0]) ?? Number.NaN;
      const stations = { x: [[0], [length]], width, thickness, density: steel };
      const same = number(told("STATIONS", stations).mass) ?? Number.NaN;
      const twice =
        number(ask("MASS", { length: 2 * length, width, thickness, density: steel })[0]) ?? Number.NaN;
      const isSame = Math.abs(same / mass - 1) < 1e-9 && Math.abs(twice / mass / 2 - 1) < 1e-9;
      return isSame ? undefined : `MASS ${mass}, STATIONS ${same}, twice as long ${twice}`;
    });
    met(BLADES, found, BLADES);
  });

  test("the masses of steels stand to one another as their densities", () => {
    const found = contradictions(({ steel, length, width, thickness }) => {
      const [mass, density] = [
        ask("MASS", { length, width, thickness, density: steel })[0],
        ask("DENSITY", { steel })[0],
      ];
      const plain = ask("MASS", { length, width, thickness, density: 7 })[0];
      const isSame = Math.abs((Number(mass) / (Number(density) * Number(plain))) * 7 - 1) < 1e-9;
      return isSame ? undefined : `${mass} at ${density}, ${plain} at 7`;
    });
    met(BLADES, found, BLADES);
  });
});

describe("orders of the same blades", () => {
  const batches = Array.from({ length: BLADES / 10 }, (_, at) => blades.slice(10 * at, 10 * at + 10));
  const rows = (name: string, ...given: unknown[]) => {
    const fn = functionNamed(name);
    if (fn === undefined) throw new Error(`no function ${name}`);
    askedOf.add(name);
    return evaluate(fn, given);
  };
  const cells = <T>(batch: readonly Blade[], of: (blade: Blade, at: number) => T) =>
    batch.map((blade, at) => [of(blade, at)]);

  test("LOADS keeps every piece and every kilogram, in whatever order the lines stand", () => {
    for (const batch of batches) {
      const asked = (lines: readonly Blade[]) =>
        rows(
          "LOADS",
          cells(lines, ({ quench }) => quench),
          cells(lines, ({ length }) => 1 + (length % 17)),
          cells(lines, ({ width }) => width / 100),
          9,
          4,
        );
      const loads = asked(batch);
      const sum = (at: number) => loads.reduce((all, row) => all + Number(row[at]), 0);
      expect(sum(2)).toBe(batch.reduce((all, { length }) => all + 1 + (length % 17), 0));
      expect(sum(3)).toBeCloseTo(
        batch.reduce((all, { length, width }) => all + (1 + (length % 17)) * (width / 100), 0),
        9,
      );
      expect(asked([...batch].reverse()).length).toBe(loads.length);
    }
  });

  test("CUT_PLAN: the same pieces in any order, twice the pieces, longer bars, a wider kerf", () => {
    const bars = (lines: readonly Blade[], times: number, bar: number, kerf: number) =>
      Number(
        rows(
          "CUT_PLAN",
          cells(lines, ({ length }) => length),
          cells(lines, () => times),
          bar,
          kerf,
        ).find(([what]) => what === "bars")?.[1],
      );
    for (const batch of batches) {
      const once = bars(batch, 2, 3000, 2);
      expect(bars([...batch].reverse(), 2, 3000, 2)).toBe(once);
      expect(bars([...batch, ...batch], 1, 3000, 2)).toBe(once);
      expect(bars(batch, 4, 3000, 2)).toBeLessThanOrEqual(2 * once);
      expect(bars(batch, 2, 6000, 2)).toBeLessThanOrEqual(once);
      expect(bars(batch, 2, 3000, 4)).toBeGreaterThanOrEqual(once);
    }
  });

  test("STARTS grow with what is wanted and with the confidence, fall with the yield; the chance is reached and not before", () => {
    const found = contradictions(({ length, width, thickness }) => {
      const [good, share, sure] = [length % 200 || 1, thickness / 10, width / 71];
      const at = (n: number, y: number, c: number) =>
        Number(ask("STARTS", { good: n, yield: y, confidence: c })[0]);
      const chance = (starts: number) => Number(ask("CHANCE_OF_ENOUGH", { starts, good, yield: share })[0]);
      const starts = at(good, share, sure);
      const isOrdered =
        at(good + 1, share, sure) > starts &&
        at(good, share, sure + 0.01) >= starts &&
        at(good, share + 0.01, sure) <= starts;
      const isLeast = chance(starts) >= sure - 1e-9 && (starts === good || chance(starts - 1) < sure);
      return isOrdered && isLeast ? undefined : `${good} at ${share} and ${sure}: ${starts}`;
    });
    met(BLADES, found, BLADES);
  });
});

// Stands last, since it counts what was asked above: it needs the whole file to run.
describe("every function that is declared", () => {
  const declared = catalogue.map(({ name }) => name);
  const left = Object.keys(NOT_OF_A_BLADE);

  test("was asked about these blades, or is named with the reason why it says nothing of one", () => {
    expect(declared.filter((name) => !askedOf.has(name) && !left.includes(name))).toEqual([]);
  });

  test("is not both, and no name is left over from one that has gone", () => {
    expect(left.filter((name) => askedOf.has(name) || !declared.includes(name))).toEqual([]);
    for (const reason of Object.values(NOT_OF_A_BLADE)) expect(reason.length).toBeGreaterThan(20);
  });
});
