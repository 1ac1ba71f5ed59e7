import type { Refusal } from "../refusal";
import type { ReadLine, RecipeLine } from "./line";

/** Cells of a line that could not be read, by what they would have been read into; each stands as if left out. */
export type Faults = Readonly<Partial<Record<keyof ReadLine, Refusal>>>;

type Cells<L> = (line: L) => readonly (keyof ReadLine)[];

const SHAPE: readonly (keyof ReadLine)[] = [
  ...["length", "width", "thickness", "grind", "tipWidth", "tipThickness"],
  ...["edge", "bevelHeight", "curve", "flatWidth", "ribHeight"],
] as (keyof ReadLine)[];

const BLANK: readonly (keyof ReadLine)[] = [
  ...["length", "width", "thickness", "blankLength", "blankWidth", "blankThickness", "forgedVolume"],
] as (keyof ReadLine)[];

const TREATMENT = ["hardenC", "temperHours", "temperCycles", "knownC", "knownHrc", "quenchToC"] as const;

/** The thickest place where it hardens; under clay only the edge has to. */
const section: Cells<RecipeLine> = ({ clayMm, sectionMm }) => {
  if (clayMm !== undefined) return ["clayMm"];
  return sectionMm === undefined ? ["clayMm", "sectionMm", "thickness"] : ["clayMm", "sectionMm"];
};

const through: Cells<RecipeLine> = (line) => ["quench", ...section(line)];

/**
 * What does not harden is not tempered, so a temper rests on the quench as well. Where no temper was chosen it follows
 * from the target, and where none was typed from the use.
 */
const temper: Cells<RecipeLine> = (line) => {
  const rests = [...TREATMENT, ...through(line), "chosenC"] as const;
  if (line.chosenC !== undefined) return rests;
  return line.target === undefined ? [...rests, "target", "use"] : [...rests, "target"];
};

const clay: Cells<RecipeLine> = () => ["clayMm", "clayFromMm"];
const subZero: Cells<RecipeLine> = () => ["quenchToC", "subZeroHours"];

/** Cells beside the steel on which each part of a recipe rests. */
const RECIPE_CELLS = {
  temper,
  status: (line) => [...temper(line), "use", "target", "length"],
  through,
  soak: ({ sectionMm }) =>
    sectionMm === undefined ? ["hardenC", "sectionMm", "thickness"] : ["hardenC", "sectionMm"],
  harden: () => ["hardenC"],
  quench: () => ["quench"],
  clay,
  subZero,
  recipe: (line) => [...temper(line), ...clay(line), ...subZero(line), "quench", "hardenC"],
} as const satisfies Readonly<Record<string, Cells<RecipeLine>>>;

export type RecipePart = keyof typeof RECIPE_CELLS;

const starts: Cells<ReadLine> = () => ["confidence"];
const bars: Cells<ReadLine> = (line) => [...starts(line), ...BLANK, "barLength", "kerf", "trim"];

const loads: Cells<ReadLine> = (line) => [
  ...starts(line),
  ...(line.recipe === undefined ? [...RECIPE_CELLS.recipe(line), "recipe" as const] : []),
  ...(line.hardenMass === undefined ? BLANK : []),
  ...(["piecesALoad", "massALoad", "hardenMass", "outsideHeat"] as const),
];

const energy: Cells<ReadLine> = (line) => [
  ...loads(line),
  ...(["efficiency", "holdEnergy", "meteredEnergy", "hardenC"] as const),
];

const hours: Cells<ReadLine> = (line) => [
  ...starts(line),
  ...(["hoursFirst", "rate", "model", "setUpHours"] as const),
];

const cost: Cells<ReadLine> = (line) => [
  ...(line.priceKg === undefined ? (["priceKg"] as const) : bars(line)),
  ...(line.energyPrice === undefined ? (["energyPrice"] as const) : energy(line)),
  ...hours(line),
  ...(["hourRate", "overheadRate", "costAStart", "costAGoodOne", "outsideHeat"] as const),
];

/** Cells beside steel, good and yield on which each part of a plan rests. */
const PLAN_CELLS = {
  ...RECIPE_CELLS,
  mass: () => SHAPE,
  starts,
  bars,
  loads,
  energy,
  ovenHours: (line) => [...loads(line), "ovenHours"],
  hours,
  cost,
  price: (line) => (line.price === undefined ? [...cost(line), "margin", "price", "priceStep"] : []),
  margin: (line) => [...cost(line), "margin", "price", "priceStep"],
} as const satisfies Readonly<Record<string, Cells<ReadLine>>>;

export type PlanPart = keyof typeof PLAN_CELLS;

function faultAmong(cells: readonly (keyof ReadLine)[], faults: Faults): Refusal | undefined {
  const faulty = cells.find((cell) => faults[cell] !== undefined);
  return faulty === undefined ? undefined : faults[faulty];
}

/** Why a part of a recipe cannot be told: the first faulty cell that it rests on. */
export function recipeFault(line: RecipeLine, faults: Faults, part: RecipePart): Refusal | undefined {
  return faultAmong(RECIPE_CELLS[part](line), faults);
}

/** Why a part of a plan cannot be told: the first faulty cell that it rests on. */
export function planFault(line: ReadLine, faults: Faults, part: PlanPart): Refusal | undefined {
  return faultAmong(PLAN_CELLS[part](line), faults);
}

/** The faults in words, each once. */
export function faultSentences(faults: Faults): readonly string[] {
  return [...new Set(Object.values(faults).map(({ message }) => message))];
}

/** What a line with a faulty cell asks for, before all else. */
export const MEND_LINE = "Mend this line: its caution says what is wrong";

/** Stands where words would, if the cells they rest on could be read. */
export const NOT_ASSESSED = "not assessed";
