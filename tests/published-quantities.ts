import { findUse } from "../src/core/blade/bands";
import { carbidesAt } from "../src/core/hardening/carbides";
import { lowerCritical, upperCritical } from "../src/core/hardening/critical";
import { criticalPoints } from "../src/core/hardening/critical-points";
import { decarbDepth } from "../src/core/hardening/decarb";
import { dissolvedAt } from "../src/core/hardening/dissolved";
import { idealDiameter } from "../src/core/hardening/ideal-diameter";
import { initialHardness } from "../src/core/hardening/initial-hardness";
import { jominyHardness } from "../src/core/hardening/jominy";
import { martensiteStart, retainedAustenite } from "../src/core/hardening/martensite";
import { type Bath, maxSection } from "../src/core/hardening/max-section";
import { quenchedHardness } from "../src/core/hardening/quenched";
import { findConversionTable } from "../src/core/hardness/conversion-tables";
import { convertHardness } from "../src/core/hardness/convert";
import { strengthOf } from "../src/core/hardness/strength";
import { acceptChance } from "../src/core/inspection/accept-chance";
import { heldBlade } from "../src/core/mechanics/flex";
import { ring } from "../src/core/mechanics/ring";
import { type LearningModel, nthHours, totalHours } from "../src/core/run/learning";
import { yieldFloor } from "../src/core/run/yield-floor";
import { findGrind } from "../src/core/shape/grinds";
import { sectionArea } from "../src/core/shape/section-area";
import { type BladeProperties, bladeProperties } from "../src/core/shape/stations";
import { carbonDiffusivity } from "../src/core/steel/billet";
import { carbonOf } from "../src/core/steel/carbon";
import { carbonAcross, cladEdge, diffusionLength } from "../src/core/steel/cladding";
import { densityOf } from "../src/core/steel/density";
import { findSteel } from "../src/core/steel/find";
import { cutPlan } from "../src/core/stock/cut-plan";
import { formulaCurve } from "../src/core/tempering/composition-formula";
import { hollomonJaffe } from "../src/core/tempering/hollomon-jaffe";
import { temperedHardness } from "../src/core/tempering/tempered";
import { bar, LENGTH, RIGIDITY, scaledFrequency } from "./mechanics/beams";
import { ask, drawn, tablesOf, total } from "./stock/small-orders";

export type Row = readonly (number | string)[];

type Quantity = (inputs: Row) => number;

const PLAIN_CARBON = findSteel("C 0.5").composition;

const number = (row: Row, index: number) => row[index] as number;
const steel = (row: Row) => findSteel(row[0] as string);

function formula(row: Row): number {
  const [C, Mn, Si, Ni, Cr, Mo, celsius, hours] = row as number[] as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  return formulaCurve({ C, Mn, Si, Ni, Cr, Mo }).hrcAt(hollomonJaffe(celsius, hours));
}

function area(row: Row): number {
  const [width, thickness, edge, bevelHeight, curve, flatWidth, ribHeight] = row.slice(1) as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const grind = findGrind(row[0] as string);
  const given = grind.curve === "" ? {} : { curve };
  return sectionArea({ grind, width, thickness, edge, bevelHeight, flatWidth, ribHeight, ...given });
}

/** Stations are lists of figures separated by spaces; the last input is the density. */
function blade(row: Row, density = number(row, 5)): BladeProperties {
  const list = (index: number) => String(row[index]).split(" ").map(Number);
  const [width, thickness, edge] = [list(2), list(3), list(4)];
  const stations = list(1).map((x, index) => ({
    grind: findGrind(row[0] as string),
    x,
    width: width[index] ?? Number.NaN,
    thickness: thickness[index] ?? Number.NaN,
    edge: edge[index],
  }));
  return bladeProperties(stations, density);
}

/** A published rod is of wood, which no blade is: it is asked ten times as heavy, since inertia is in proportion. */
function inertiaOf(row: Row): number {
  const times = number(row, 5) < 1 ? 10 : 1;
  return blade(row, times * number(row, 5)).inertia / times;
}

/** °C of a temperature in °F, for sources that print it so. */
export function celsiusOf(fahrenheit: number): number {
  return (fahrenheit - 32) / 1.8;
}

const LOW_ALLOY = findConversionTable("low alloy");
const MPA_A_KSI = 6.894757;
const MM_A_SIXTEENTH = 25.4 / 16;

function temperedAtFahrenheit(row: Row): number {
  const treatment = { hours: number(row, 2), cycles: 1 };
  return temperedHardness(steel(row), celsiusOf(number(row, 1)), treatment);
}

/** Megapascals; a hardness for which the library holds no strength would be a row lost. */
function tensile(hrc: number): number {
  return strengthOf(hrc, "HRC").tensileMPa ?? Number.NaN;
}

function learningHours(row: Row): number {
  const curve = { first: 1, rate: number(row, 0), model: "unit" as LearningModel };
  return row[2] === "nth" ? nthHours(curve, number(row, 1)) : totalHours(curve, number(row, 1));
}

/** Lengths and quantities are lists of figures separated by spaces. */
function fewestBars(row: Row): number {
  const list = (index: number) => String(row[index]).split(" ").map(Number);
  const quantities = list(2);
  const pieces = list(1).map((length, index) => ({ length, quantity: quantities[index] ?? Number.NaN }));
  return cutPlan({ pieces, bars: [{ length: number(row, 0) }], kerf: 0, trim: 0 }).bars;
}

const MM_PER_M = 1000;
const UM2_PER_M2 = 1e12;

/** √(D t) of carbon [m]. */
const lengthOf = (celsius: number, carbon: number, minutes: number) =>
  Math.sqrt(carbonDiffusivity(celsius, carbon) * minutes * 60);

/** Half a step of carbon on either side of the mean, by which the answer is divided. */
function acrossWeld(row: Row): number {
  const weld = { core: 0.9, clad: 0.1, celsius: 1100, minutes: 20 };
  const [mean, half] = [(weld.core + weld.clad) / 2, (weld.core - weld.clad) / 2];
  return (carbonAcross(weld, number(row, 0) * 2 * diffusionLength(weld)) - mean) / half;
}

/** Depth of the edge of a weld with a cladding of 0.1 % C, or of the skin under a bare face, over √(D t). */
function depthOfDiffusion(row: Row): number {
  const [name, celsius, minutes] = [row[1] as string, number(row, 2), number(row, 3)];
  const core = carbonOf(name);
  if (String(row[0]).endsWith("bare face"))
    return decarbDepth(name, celsius, minutes) / MM_PER_M / lengthOf(celsius, core, minutes);
  const weld = { core, clad: 0.1, celsius, minutes };
  const mean = (core + weld.clad) / 2;
  return cladEdge({ ...weld, layer: 50 }).depth / MM_PER_M / lengthOf(celsius, mean, minutes);
}

function cheapestOrder(row: Row): number {
  const order = drawn(number(row, 0));
  const cost = total(ask(tablesOf(order), order.most, order.kerf, order.trim));
  return typeof cost === "number" ? cost : Number.NaN;
}

/** What a published table may be checked for: its inputs in the order of its columns, the last column being the answer. */
export const QUANTITIES: Readonly<Record<string, Quantity>> = {
  "hardness after temper": (row) =>
    temperedHardness(steel(row), number(row, 1), { hours: number(row, 2), cycles: 1 }),
  "hardness after temper, °F": temperedAtFahrenheit,
  "Brinell hardness after temper, °F": (row) =>
    convertHardness(temperedAtFahrenheit(row), "HRC", "HB", LOW_ALLOY),
  "composition formula": formula,
  "initial hardness": (row) => initialHardness(number(row, 0)),
  "hardness as quenched": (row) => quenchedHardness(steel(row), number(row, 1)).hrc,
  "martensite start": (row) => martensiteStart(steel(row).composition),
  "martensite start as hardened": (row) => criticalPoints(steel(row), number(row, 1)).ms ?? Number.NaN,
  "lower critical": (row) => lowerCritical(steel(row).composition),
  "upper critical": (row) => upperCritical(steel(row).composition, steel(row).composition.C),
  "end-quench hardness": (row) => jominyHardness(steel(row), number(row, 1) * MM_A_SIXTEENTH),
  "retained austenite": (row) => retainedAustenite({ ...PLAIN_CARBON, C: number(row, 0) }),
  "carbon in austenite": (row) => dissolvedAt(steel(row), number(row, 1)).carbon,
  "chromium in austenite": (row) => dissolvedAt(steel(row), number(row, 1)).chromium,
  "carbide left undissolved": (row) => carbidesAt(steel(row), number(row, 1) || undefined).volume,
  "ideal diameter": (row) => idealDiameter(steel(row).composition),
  "thickest section fully hard": (row) => maxSection(steel(row), row[1] as Bath).fullyHardMm,
  "thickest section half hard": (row) => maxSection(steel(row), row[1] as Bath).halfHardMm,
  "hardness from Brinell": (row) => convertHardness(number(row, 0), "HB", "HRC", LOW_ALLOY),
  "tensile strength": (row) => tensile(number(row, 0)),
  "yield strength": (row) => strengthOf(number(row, 0), "HRC").yieldMPa,
  "tensile strength, ksi": (row) => tensile(number(row, 0)) / MPA_A_KSI,
  density: (row) => densityOf(steel(row)).value,
  "yield floor": (row) => yieldFloor(number(row, 0), number(row, 1), number(row, 2)),
  "chance of acceptance": (row) => acceptChance(number(row, 0), number(row, 1), number(row, 2)),
  "learning hours": learningHours,
  "fewest bars": fewestBars,
  "cheapest order of several offers": cheapestOrder,
  "carbon across a weld": acrossWeld,
  "depth of diffusion": depthOfDiffusion,
  "diffusivity of carbon": (row) => UM2_PER_M2 * carbonDiffusivity(number(row, 0), number(row, 1)),
  "section area": area,
  "blade mass": (row) => blade(row).mass,
  "blade balance": (row) => blade(row).balance,
  "blade inertia": inertiaOf,
  "slope of a bent bar": (row) => {
    const held = heldBlade(bar(), 0, LENGTH);
    return held.bend((number(row, 0) * RIGIDITY) / LENGTH ** 2).slope;
  },
  "deflection of a tapered bar": (row) =>
    (3 * RIGIDITY) / LENGTH ** 3 / heldBlade(bar(number(row, 0)), 0, LENGTH).stiffness,
  "frequency of a free bar": (row) => {
    const { first, second } = ring(bar(number(row, 0), number(row, 1)), []);
    return scaledFrequency(row[2] === 1 ? first : second);
  },
  "quiet point of a free bar": (row) => {
    const { quietNearHeel, quietNearTip } = ring(bar(number(row, 0), number(row, 1)), []);
    return ((row[2] === 1 ? quietNearHeel : quietNearTip) ?? Number.NaN) / LENGTH;
  },
  "end of the usual band": (row) => {
    const use = findUse(row[0] as string);
    return row[1] === "low" ? use.low : use.high;
  },
};
