import { type Answers, differing, number, type Told, table, told } from "./blade";
import type { BladeRule } from "./rules";

/*
 * What the functions of a steel and of one property of a blade say of the same blades. No source is needed: one function
 * tells in words or in a table what another tells as a figure, or a balance has to come out.
 */

const traitsOf = (answers: Answers): Told => answers.ask("STEEL_TRAITS", { steel: answers.blade.steel });

const hardeningOf = (answers: Answers) => {
  const told = answers.ask("HARDENING", { steel: answers.blade.steel });
  return { low: number(told["harden, low"]), high: number(told["harden, high"]) };
};

/** The middle of the published window, where every function that is told no temperature hardens a steel. */
function middleOf(answers: Answers): number | undefined {
  const { low, high } = hardeningOf(answers);
  return low === undefined || high === undefined ? undefined : (low + high) / 2;
}

const figureOf = (answers: Answers, name: string, more = {}) =>
  number(answers.ask(name, { steel: answers.blade.steel, ...more }).answer);

/** The first figure before a unit in a text. */
const firstBefore = (text: unknown, unit: string) => {
  const found = new RegExp(`(\\d+(?:\\.\\d+)?) ${unit}`).exec(String(text))?.[1];
  return found === undefined ? undefined : Number(found);
};

/** Whether a figure lies between two, with what was told where it does not. */
function ordered(what: string, ...figures: readonly number[]): string {
  const isRising = figures.every((figure, at) => at === 0 || figure >= (figures[at - 1] as number) - 1e-9);
  return isRising ? "" : `${what}: ${figures.join(", ")}`;
}

const treatedIn = (answers: Answers) => answers.ask("TREATMENT", answers.part);

/** A blade of one width and thickness from heel to tip, as the functions of stations take it. */
function barOf({ blade: { steel, length, width, thickness } }: Answers) {
  return { x: [[0], [length]], width, thickness, density: steel };
}

const OF_STEEL: readonly BladeRule[] = [
  {
    says: "the window of STEEL_TRAITS is that of HARDENING",
    share: 0.3,
    holds: (answers) => {
      const { low, high } = hardeningOf(answers);
      const { window } = traitsOf(answers);
      if (low === undefined || high === undefined) return undefined;
      const named = [...String(window).matchAll(/(\d+) °C/g)].map(([, celsius]) => Number(celsius));
      return differing([
        ["low", named[0], low, 1],
        ["high", named.at(-1), high, 1],
      ]);
    },
  },
  {
    says: "the depth of hardening of STEEL_TRAITS is the thickness of MAX_SECTION",
    share: 0.3,
    holds: (answers) => {
      const depth = String(traitsOf(answers)["depth of hardening"]);
      const quench = /in (fast oil|still air)$/.exec(depth)?.[1];
      if (quench === undefined) return undefined;
      const most = answers.ask("MAX_SECTION", { steel: answers.blade.steel, quench });
      return differing([["mm", firstBefore(depth, "mm"), most["fully hard"], 0.5]]);
    },
  },
  {
    says: "what does not harden by STEEL_TRAITS does not by TREATMENT and ASSESS, in any quench",
    share: 0.02,
    holds: (answers) => {
      if (traitsOf(answers).kind !== "does not harden") return undefined;
      const { temperC } = answers.blade;
      const { status } = answers.ask("ASSESS", { ...answers.part, temper: temperC });
      return differing([
        ["TREATMENT", treatedIn(answers)["through-hardens"], "does not harden"],
        ["ASSESS", status, "does not harden"],
      ]);
    },
  },
  {
    says: "STEEL_TRAITS calls stainless what STAINLESS does",
    share: 0.1,
    holds: (answers) => {
      const { verdict } = answers.ask("STAINLESS", { steel: answers.blade.steel });
      const word = /^(stainless|barely stainless)/.exec(String(verdict))?.[1];
      if (word === undefined) return undefined;
      return differing([["word", traitsOf(answers).rust, word]]);
    },
  },
  {
    says: "STEELS_FOR names the rust and the toughness of STEEL_TRAITS",
    share: 0.1,
    holds: (answers) => {
      const { steel, ...question } = answers.part;
      const row = answers.ask("STEELS_FOR", { ...question, among: steel });
      if (row.status === "ruled out" || String(row.rust).startsWith("#")) return undefined;
      const { rust, toughness } = traitsOf(answers);
      return differing([
        ["rust", row.rust, rust],
        ["toughness", row.toughness, toughness],
      ]);
    },
  },
  {
    says: "the skin loss of STEEL_TRAITS is DECARB of ten minutes at the usual hardening temperature",
    share: 0.2,
    holds: (answers) => {
      const mm = firstBefore(traitsOf(answers)["skin loss"], "mm");
      const celsius = middleOf(answers);
      if (mm === undefined || celsius === undefined) return undefined;
      return differing([["mm", figureOf(answers, "DECARB", { celsius, minutes: 10 }), mm, 0.006]]);
    },
  },
  {
    says: "GRIND_ALLOWANCE takes off more than DECARB, and more after two heats",
    share: 0.2,
    holds: (answers) => {
      const { steel } = answers.blade;
      const celsius = middleOf(answers);
      const skin = number(told("DECARB", { steel, celsius, minutes: 10 }).answer);
      const [once, twice] = [1, 2].map((heats) =>
        number(
          answers.ask("GRIND_ALLOWANCE", { steel, celsius, minutes: 10, heats })["skin to remove a face"],
        ),
      );
      if (celsius === undefined || skin === undefined || once === undefined || twice === undefined)
        return undefined;
      return ordered("skin, once, twice", skin, once, twice);
    },
  },
  {
    says: "what DISSOLVED puts in solution is no more than COMPOSITION has, and more of it the hotter",
    share: 0.3,
    holds: (answers) => {
      const { steel } = answers.blade;
      const { low, high } = hardeningOf(answers);
      if (low === undefined || high === undefined) return undefined;
      const [cool, hot] = [low, high].map((hardenC) => answers.ask("DISSOLVED", { steel, hardenC }));
      const most = (element: string) =>
        number(answers.ask("COMPOSITION", { steel, element, bound: "high" }).answer);
      const wrong = (["carbon", "chromium"] as const).map((what) => {
        const [one, other] = [number(cool?.[what]), number(hot?.[what])];
        // Nitrogen hardens with carbon and is counted as such.
        const limit = what === "carbon" ? (most("C") ?? 5) + (most("N") ?? 0) : (most("Cr") ?? 99);
        return one === undefined || other === undefined
          ? undefined
          : ordered(what, one, other, limit + 0.005);
      });
      return wrong.includes(undefined) ? undefined : wrong.join("");
    },
  },
  {
    says: "STAINLESS counts the chromium of DISSOLVED",
    share: 0.01,
    holds: (answers) => {
      const { steel } = answers.blade;
      const hardenC = middleOf(answers);
      const dissolved = number(told("DISSOLVED", { steel, hardenC }).chromium);
      const counted = number(told("STAINLESS", { steel, hardenC })["dissolved chromium"]);
      if (hardenC === undefined || dissolved === undefined || counted === undefined) return undefined;
      return differing([["Cr", counted, dissolved, 0.06]]);
    },
  },
  {
    says: "RETAINED is a share, less of it after a deep freeze, and all of it above the Ms of CRITICAL",
    share: 0.3,
    holds: (answers) => {
      const { steel } = answers.blade;
      const hardenC = middleOf(answers);
      if (hardenC === undefined) return undefined;
      const left = (quenchToC: number) => number(told("RETAINED", { steel, hardenC, quenchToC }).answer);
      const [frozen, room] = [left(-80), left(20)];
      const ms = number(told("CRITICAL", { steel, hardenC }).Ms);
      if (frozen === undefined || room === undefined) return undefined;
      const atStart = ms === undefined || ms < 20 || ms > 250 ? undefined : left(Math.min(250, ms + 2));
      // Shown in whole degrees: a degree or two off the start of martensite a few per cent may have turned.
      const isAll = atStart === undefined || atStart > 90;
      return ordered("RETAINED", 0, frozen, room, 100) + (isAll ? "" : `${atStart} % at Ms ${ms}`);
    },
  },
  {
    says: "a deep freeze never makes a blade softer by QUENCHED_HRC than RETAINED lets it",
    share: 0.3,
    holds: (answers) => {
      const { steel } = answers.blade;
      const [room, frozen] = [20, -80].map((quenchToC) =>
        number(told("QUENCHED_HRC", { steel, quenchToC }).answer),
      );
      return room === undefined || frozen === undefined ? undefined : ordered("HRC", room, frozen);
    },
  },
  {
    says: "CRITICAL in order: Ms under Ac1 under the upper one; HARDENING above Ac1, the temper of TREATMENT under it",
    share: 0.3,
    holds: (answers) => {
      const { Ac1, "upper critical": upper, Ms } = answers.ask("CRITICAL", { steel: answers.blade.steel });
      const { low } = hardeningOf(answers);
      const temper = number(treatedIn(answers)["temper C"]);
      const [ac1, ac3, ms] = [number(Ac1), number(upper), number(Ms)];
      if (ac1 === undefined || ac3 === undefined) return undefined;
      return [
        ordered("Ms, Ac1, upper", ms ?? 0, ac1, ac3),
        low === undefined ? "" : ordered("Ac1, harden", ac1, low),
        temper === undefined ? "" : ordered("temper, Ac1", temper, ac1),
      ].join("");
    },
  },
  {
    says: "JOMINY falls along the bar from about QUENCHED_HRC, the deeper the greater HARDENABILITY",
    share: 0.1,
    holds: (answers) => {
      const { steel } = answers.blade;
      const along = [1.5, 10, 25, 50].map((distance) => figureOf(answers, "JOMINY", { distance }));
      const quenched = number(told("QUENCHED_HRC", { steel }).answer);
      if (along.includes(undefined) || quenched === undefined) return undefined;
      const figures = along as number[];
      const end =
        Math.abs((figures[0] ?? 0) - quenched) <= 4 ? "" : `end ${figures[0]}, quenched ${quenched}`;
      return ordered("JOMINY", ...[...figures].reverse()) + end;
    },
  },
  {
    says: "no plate of MAX_SECTION is thicker than the round of HARDENABILITY, whose quench is ideal",
    share: 0.2,
    holds: (answers) => {
      const { steel, quench } = answers.blade;
      const ideal = figureOf(answers, "HARDENABILITY");
      const half = number(answers.ask("MAX_SECTION", { steel, quench })["half martensite"]);
      if (ideal === undefined || half === undefined || /air|plates|gas/.test(quench)) return undefined;
      return ordered("plate, round", half, ideal);
    },
  },
  {
    says: "a coupon that reads as expected moves nothing by TEMPER_FIT, and TEMPER_FOR stays where it was",
    share: 0.3,
    holds: (answers) => {
      const { steel, temperC, target } = answers.blade;
      const expected = number(answers.ask("TEMPERED_HRC", { steel, temperC }).answer);
      if (expected === undefined || expected < 20) return undefined;
      const fit = told("TEMPER_FIT", { steel, tempers: [[temperC]], readings: [[expected]] });
      const known = { knownC: fit["known C"], knownHrc: fit["known HRC"] };
      const after = number(told("TEMPER_FOR", { steel, targetHrc: target, ...known }).answer);
      // On a flat curve the rounding of a reading moves a temper by degrees: what both give is compared.
      const gives =
        after === undefined ? undefined : number(told("TEMPERED_HRC", { steel, temperC: after }).answer);
      const moved = differing([
        ["shift", fit.shift, 0, 0.051],
        ["known C", fit["known C"], temperC],
        ["known HRC", fit["known HRC"], expected, 0.06],
        ["worst misfit", fit["worst misfit"], 0, 0.051],
      ]);
      const isPlanned = /one answer|plateau|embrittlement/.test(
        String(told("TEMPER_PLAN", { steel, targetHrc: target }).flag),
      );
      return moved + (gives === undefined || !isPlanned ? "" : differing([["HRC", gives, target, 0.16]]));
    },
  },
  {
    says: "a coupon two points over the curve moves TEMPER_FIT up by less, and TEMPERED_HRC with it",
    share: 0.2,
    holds: (answers) => {
      const { steel, temperC } = answers.blade;
      const expected = number(answers.ask("TEMPERED_HRC", { steel, temperC }).answer);
      if (expected === undefined || expected < 20 || expected > 65) return undefined;
      const fit = told("TEMPER_FIT", { steel, tempers: [[temperC]], readings: [[expected + 2]] });
      const [shift, knownC, knownHrc] = [fit.shift, fit["known C"], fit["known HRC"]].map(number);
      if (shift === undefined || knownC === undefined) return `${fit["known C"]}`;
      const moved = number(told("TEMPERED_HRC", { steel, temperC, knownC, knownHrc }).answer);
      return ordered("shift", 0.01, shift, 2) + differing([["HRC", moved, expected + shift, 0.11]]);
    },
  },
  {
    says: "STEEL, DENSITY, CARBON and COMPOSITION print the same figures",
    share: 0.5,
    holds: (answers) => {
      const { steel } = answers.blade;
      const row = told("STEEL", { steel });
      const typical = number(answers.ask("COMPOSITION", { steel, element: "C", bound: "typical" }).answer);
      const carbon = figureOf(answers, "CARBON");
      const [low, high] = [number(row["C low"]) ?? 0, number(row["C high"]) ?? 5];
      return [
        differing([["density", row.density, figureOf(answers, "DENSITY"), 1e-9]]),
        carbon === undefined ? "" : ordered("C low, CARBON, C high", low, carbon, high),
        typical === undefined ? "" : ordered("C low, COMPOSITION, C high", low, typical, high),
      ].join("");
    },
  },
  {
    says: "NEAREST_GRADES never names the steel itself",
    share: 0.9,
    holds: (answers) => {
      const { steel } = answers.blade;
      const { designation } = told("STEEL", { steel });
      const others = table("NEAREST_GRADES", { steel }).map((row) => row.designation);
      return others.includes(designation) ? `${designation} among ${others.join(", ")}` : "";
    },
  },
  {
    says: "a heat of the typical composition passes the CERTIFICATE of its steel or lacks figures",
    share: 0.3,
    holds: (answers) => {
      const { steel } = answers.blade;
      const rows = table("COMPOSITION", { steel }).map(
        ({ answer: element, 1: low, 2: high, 3: typical }) => ({
          element,
          isLimited: low !== "" || high !== "",
          typical,
        }),
      );
      const given = rows.filter(({ isLimited, typical }) => isLimited && number(typical) !== undefined);
      if (given.length === 0) return undefined;
      const lines = table("CERTIFICATE", {
        steel,
        elements: given.map(({ element }) => [element]),
        values: given.map(({ typical }) => [typical]),
      });
      const first = String(lines[0]?.element ?? "");
      if (first.startsWith("#")) return undefined;
      const bad = lines.find(({ status }) => status === "HIGH" || status === "LOW");
      return bad === undefined ? "" : JSON.stringify(bad);
    },
  },
];

const OF_SHAPE: readonly BladeRule[] = [
  {
    says: "the area of SECTION_AREA along the blade is the volume behind MASS, and BLADE_AT weighs it whole from the heel",
    share: 0.9,
    holds: (answers) => {
      const { steel, length, width, thickness } = answers.blade;
      const grind = "flat";
      const area = number(told("SECTION_AREA", { grind, width, thickness }).answer) ?? Number.NaN;
      const mass = number(told("MASS", { length, width, thickness, grind, density: steel }).answer);
      const density = figureOf(answers, "DENSITY") ?? Number.NaN;
      const heel = told("BLADE_AT", { ...barOf(answers), grind, at: 0 });
      return differing([
        ["MASS", (area * length * density) / 1000, mass, 1e-6 * (mass ?? 0)],
        ["BLADE_AT", heel["mass to the tip"], mass, 1e-6 * (mass ?? 0)],
        ["area", heel.area, area, 1e-6],
        ["width", heel.width, width],
        ["thickness", heel.thickness, thickness],
      ]);
    },
  },
  {
    says: "THICKNESS_FOR_FLEX leaves a blade as it is that has its stiffness by FLEX already",
    share: 0.5,
    holds: (answers) => {
      const { length, target } = answers.blade;
      const bar = barOf(answers);
      const bent = told("FLEX", { ...bar, hrc: target, load: 5, loadAt: length });
      const stiffness = number(bent.stiffness);
      if (stiffness === undefined) return undefined;
      const again = told("THICKNESS_FOR_FLEX", { ...bar, stiffness, loadAt: length });
      return differing([["factor", again["factor on thickness"], 1, 1e-3]]);
    },
  },
  {
    says: "FLEX takes a set at the load whose stress is the yield of STRENGTH, and a thicker blade bears more",
    share: 0.3,
    holds: (answers) => {
      const { length, target, thickness } = answers.blade;
      const [thin, thick] = [thickness, 1.5 * thickness].map((mm) =>
        told("FLEX", { ...barOf(answers), thickness: mm, hrc: target, load: 5, loadAt: length }),
      );
      const yieldMPa = number(told("STRENGTH", { value: target }).yield);
      const [stress, share] = [number(thin?.["largest stress"]), number(thin?.["share of yield"])];
      const [load, more] = [number(thin?.["load at set"]), number(thick?.["load at set"])];
      if (yieldMPa === undefined || stress === undefined || share === undefined) return undefined;
      const same = differing([["share of yield", share, stress / yieldMPa, 0.02 * share + 0.006]]);
      return same + (load === undefined || more === undefined ? "" : ordered("load at set", load, more));
    },
  },
  {
    says: "EDGE_FOR_LOAD gives back the thickness behind the edge whose load EDGE_LOAD tells",
    share: 0.3,
    holds: (answers) => {
      const { target: hrc } = answers.blade;
      const load = number(
        told("EDGE_LOAD", { hrc, behind: 0.5, angle: 15 })["side load that sets the bevel"],
      );
      if (load === undefined) return undefined;
      return differing([["mm", told("EDGE_FOR_LOAD", { hrc, load, angle: 15 }).answer, 0.5, 0.01]]);
    },
  },
  {
    says: "RING rises in proportion to thickness and falls with the square of length",
    share: 0.9,
    holds: (answers) => {
      const bar = barOf(answers);
      const { length, thickness } = answers.blade;
      const first = (more: object) =>
        number(told("RING", { ...bar, ...more })["first frequency"]) ?? Number.NaN;
      const [once, thick, long] = [
        first({}),
        first({ thickness: 2 * thickness }),
        first({ x: [[0], [2 * length]] }),
      ];
      return differing([
        ["twice as thick", thick / once, 2, 1e-3],
        ["twice as long", once / long, 4, 2e-3],
      ]);
    },
  },
  {
    says: "SET_RADIUS is the radius at which FLEX takes a set: half the thickness over the strain of the yield",
    share: 0.3,
    holds: (answers) => {
      const { thickness, target: hrc } = answers.blade;
      const yieldMPa = number(told("STRENGTH", { value: hrc }).yield);
      const radius = number(told("SET_RADIUS", { thickness, hrc }).answer);
      if (yieldMPa === undefined || radius === undefined) return undefined;
      // Elastic modulus 207 GPa, as SAE handbooks give it for carbon and low-alloy steel.
      return differing([["mm", radius, (207_000 * thickness) / 2 / yieldMPa, 0.01 * radius]]);
    },
  },
  {
    says: "the heat that HEAT_CONTENT counts is what OIL_RISE finds in the oil that OIL_LITRES asks for",
    share: 0.3,
    holds: (answers) => {
      const to = 60;
      const from = middleOf(answers);
      const { length, width, thickness } = answers.blade;
      const mass = (number(told("MASS", { length, width, thickness }).answer) ?? 1000) / 1000;
      if (from === undefined) return undefined;
      const litres = number(told("OIL_LITRES", { mass, from, to, rise: 20 }).answer);
      if (litres === undefined) return undefined;
      const heat = number(told("HEAT_CONTENT", { from: to, to: from }).answer) ?? Number.NaN;
      const twice = number(told("OIL_LITRES", { mass: 2 * mass, from, to, rise: 20 }).answer);
      return differing([
        ["rise", told("OIL_RISE", { mass, from, to, litres }).rise, 20, 0.05],
        ["twice the mass", twice, 2 * litres, 1e-6 * litres],
        ["heat", Number(heat > 0), 1],
      ]);
    },
  },
];

export const STEEL_RULES: readonly BladeRule[] = [...OF_STEEL, ...OF_SHAPE];
