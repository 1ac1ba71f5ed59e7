import { describe, expect, test } from "vitest";
import { TREATMENT } from "../../src/functions/run";
import { PLAN_HEADINGS } from "../../src/functions/run/plan-headings";
import { answer } from "../stock/call";
import { type Line, plan } from "./run";

/** Two lines with every kind of cell filled: one with an aim and own tempers, one that leaves both to its use. */
const FULL: readonly Line[] = [
  {
    line: "A",
    use: "Chef knife thin hard",
    steel: "52100",
    good: 20,
    yield: 0.9,
    confidence: 0.9,
    length: 200,
    width: 45,
    thickness: 2.5,
    grind: "flat",
    "tip width": 20,
    "tip thickness": 1.5,
    edge: 0.4,
    "edge angle": 15,
    "target HRC": 60,
    quench: "fast oil",
    "harden C": 835,
    "temper hours": 2,
    "temper cycles": 2,
    "pieces a load": 6,
    "kg a load": 4,
    efficiency: 0.3,
    "hold kWh": 2,
    "oven h": 5,
    "blank length": 330,
    "bar length": 2000,
    kerf: 1.2,
    trim: 10,
    "price kg": 9,
    "price date": "2026-10-01",
    "hours first": 3,
    rate: 0.9,
    model: "unit",
    "set-up h": 2,
    "hour rate": 40,
    "overhead rate": 5,
    "cost a start": 3,
    "cost a good one": 8,
    "kWh price": 0.3,
    margin: 0.3,
    "price step": 1,
  },
  {
    line: "B",
    use: "Machete light",
    steel: "1075",
    good: 30,
    yield: 0.9,
    length: 450,
    width: 50,
    thickness: 3,
    quench: "agitated water",
    "harden C": 820,
    "temper hours": 2,
    "blank length": 600,
    "bar length": 3000,
    "pieces a load": 8,
    "price kg": 4,
    "hours first": 2,
    "hour rate": 40,
    "kWh price": 0.3,
    price: 140,
  },
];

/** Other figures and words that each of those cells may hold. */
const OTHER: Line = {
  use: "Machete light",
  confidence: 0.99,
  length: 180,
  width: 40,
  thickness: 2.2,
  grind: "hollow",
  "tip width": 12,
  "tip thickness": 1.2,
  edge: 0.6,
  "edge angle": 18,
  "target HRC": 58,
  quench: "brine",
  "harden C": 850,
  "temper hours": 1,
  "temper cycles": 3,
  "pieces a load": 3,
  "kg a load": 2,
  efficiency: 0.2,
  "hold kWh": 3,
  "oven h": 9,
  "blank length": 640,
  "bar length": 2500,
  kerf: 3,
  trim: 60,
  "price kg": 11,
  "hours first": 4,
  rate: 0.8,
  model: "average",
  "set-up h": 5,
  "hour rate": 55,
  "overhead rate": 9,
  "cost a start": 6,
  "cost a good one": 12,
  "kWh price": 0.5,
  margin: 0.5,
  "price step": 10,
  price: 180,
  "hardened mm": 9,
  "chosen temper C": 240,
  "quench to C": -75,
  "harden g": 300,
  "kWh a load": 12,
  recipe: "as the last run",
};

const WORDS = new Set(["cautions", "next step"]);

const BROKEN = { type: "Error", basicValue: "#REF!" };

/** A line of the two, planned with one of its cells changed. */
function lineWith(at: number, label: string, value: unknown): Record<string, unknown> {
  return plan(FULL.map((each, n) => (n === at ? { ...each, [label]: value } : each)))[at] ?? {};
}

/** The results that a change of a cell moves. */
function movedResults(before: Line = {}, moved: Line = {}): string[] {
  return Object.keys(before).filter(
    (result) => !WORDS.has(result) && !Object.is(before[result], moved[result]),
  );
}

describe("no answer rests on a cell that could not be read", () => {
  const cells = Object.values(PLAN_HEADINGS).filter(({ optional, label }) => optional && label in OTHER);

  test("most of the cells that may be left out are asked about", () => {
    expect(cells.length).toBeGreaterThan(35);
  });

  // The list of what each part rests on is held against what the answers do: a result that moves with a cell must be
  // refused where that cell cannot be read.
  test.each(cells.map(({ label }) => label))("%s", (label) => {
    for (const at of FULL.keys()) {
      const [before, moved, faulty] = [FULL[at]?.[label] ?? null, OTHER[label], BROKEN].map((value) =>
        lineWith(at, label, value),
      );
      expect(faulty?.cautions).toMatch(/#REF!/);
      for (const result of movedResults(before, moved)) {
        expect([result, String(faulty?.[result])]).toEqual([
          result,
          expect.stringMatching(/#REF!|^not assessed$/),
        ]);
      }
    }
  });
});

describe("TREATMENT beside a faulty cell", () => {
  const headings = TREATMENT.result as readonly { readonly label: string }[];
  const treated = (...args: unknown[]) => {
    const [row = []] = answer(TREATMENT, ...args);
    return Object.fromEntries(headings.map(({ label }, at) => [label, row[at]]));
  };
  const whole = treated("52100", "Chef knife thin hard", 60, "fast oil", 2.5, 200);

  test("a use that nobody knows leaves the temper of a typed target", () => {
    const row = treated("52100", "Chef nife", 60, "fast oil", 2.5, 200);
    for (const kept of ["temper C", "HRC low", "HRC high", "soak", "quench", "through-hardens", "recipe"]) {
      expect([kept, row[kept]]).toEqual([kept, whole[kept]]);
    }
    expect(row["band status"]).toBe("not assessed");
    expect(row.cautions).toMatch(/Chef nife/);
    expect(row["next step"]).toMatch(/^Mend this line/);
  });

  test("a quench that nobody knows leaves the soak", () => {
    const row = treated("52100", "Chef knife thin hard", 60, "sea", 2.5, 200);
    expect([row.harden, row.soak]).toEqual([whole.harden, whole.soak]);
    expect(row["temper C"]).toMatch(/sea/);
    expect([row.quench, row["through-hardens"]]).toEqual(["not assessed", "not assessed"]);
    expect(row.cautions).toMatch(/sea/);
  });

  test("hours of temper that cannot be leave soak and quench", () => {
    const row = treated("52100", "Chef knife thin hard", 60, "fast oil", 2.5, 200, null, null, null, -2);
    expect(row["temper C"]).toMatch(/temper hours: -2 h given/);
    expect([row.soak, row.quench]).toEqual([whole.soak, whole.quench]);
    expect(row.cautions).toMatch(/Temper hours: -2 h given/);
  });

  test("a steel that nobody knows still stops the row", () => {
    expect(treated("80CrV22X", null, 60)["temper C"]).toMatch(/80CrV22X/);
  });
});
