import { dissolvedAt } from "../src/core/hardening/dissolved";
import { idealDiameter } from "../src/core/hardening/ideal-diameter";
import { martensiteStart, retainedAustenite } from "../src/core/hardening/martensite";
import { type Bath, maxSection } from "../src/core/hardening/max-section";
import { initialHardness, quenchedHardness } from "../src/core/hardening/quenched";
import { findUse } from "../src/core/hardness/bands";
import { findGrind } from "../src/core/shape/grinds";
import { sectionArea } from "../src/core/shape/section-area";
import { type BladeProperties, bladeProperties } from "../src/core/shape/stations";
import { findSteel } from "../src/core/steel/find";
import { formulaHardness } from "../src/core/tempering/composition-formula";
import { temperedHardness } from "../src/core/tempering/tempered";

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
  return formulaHardness({ C, Mn, Si, Ni, Cr, Mo }, celsius, hours);
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
function blade(row: Row): BladeProperties {
  const list = (index: number) => String(row[index]).split(" ").map(Number);
  const [width, thickness, edge] = [list(2), list(3), list(4)];
  const stations = list(1).map((x, index) => ({
    grind: findGrind(row[0] as string),
    x,
    width: width[index] ?? Number.NaN,
    thickness: thickness[index] ?? Number.NaN,
    edge: edge[index],
  }));
  return bladeProperties(stations, number(row, 5));
}

/** What a published table may be checked for: its inputs in the order of its columns, the last column being the answer. */
export const QUANTITIES: Readonly<Record<string, Quantity>> = {
  "hardness after temper": (row) =>
    temperedHardness(steel(row), number(row, 1), { hours: number(row, 2), cycles: 1 }),
  "composition formula": formula,
  "initial hardness": (row) => initialHardness(number(row, 0)),
  "hardness as quenched": (row) => quenchedHardness(steel(row), number(row, 1)).hrc,
  "martensite start": (row) => martensiteStart(steel(row).composition),
  "retained austenite": (row) => retainedAustenite({ ...PLAIN_CARBON, C: number(row, 0) }),
  "carbon in austenite": (row) => dissolvedAt(steel(row), number(row, 1)).carbon,
  "chromium in austenite": (row) => dissolvedAt(steel(row), number(row, 1)).chromium,
  "ideal diameter": (row) => idealDiameter(steel(row).composition),
  "thickest section fully hard": (row) => maxSection(steel(row), row[1] as Bath).fullyHardMm,
  "thickest section half hard": (row) => maxSection(steel(row), row[1] as Bath).halfHardMm,
  "section area": area,
  "blade mass": (row) => blade(row).mass,
  "blade balance": (row) => blade(row).balance,
  "blade inertia": (row) => blade(row).inertia,
  "end of the usual band": (row) => {
    const use = findUse(row[0] as string);
    return row[1] === "low" ? use.low : use.high;
  },
};
