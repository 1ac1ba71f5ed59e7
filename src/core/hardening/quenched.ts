import table from "../../data/hardening/as-quenched.json";
import { temperatureText } from "../quantity-text";
import { NotAvailable } from "../refusal";
import { checkRange, type Relation, relation } from "../relation";
import type { SourceKey } from "../sources";
import { type SteelAsked, steelAsked } from "../steel/asked";
import { carbonOf } from "../steel/carbon";
import { checkElements, elements } from "../steel/element-ranges";
import { heldName } from "../steel/kin";
import type { Steel } from "../steel/steel";
import { grouped, number, records, sourceKey, text } from "../table";
import { CARBIDE_CARBON, dissolvedAt } from "./dissolved";
import { usualHardening } from "./hardening-temperature";
import { initialHardness } from "./initial-hardness";
import { HRC_PER_PERCENT_AUSTENITE, retainedAustenite } from "./martensite";
import { isMartensiticStainless, STAINLESS_HARDNESS, stainlessLevel } from "./stainless";
import { ROOM_C, subZeroGain } from "./sub-zero";

/** Initial hardness of the Jominy calculation. */
export const INITIAL_HARDNESS = relation({
  title: "Hardness of martensite up to 0.60 % C",
  source: "astm-a255",
  locator: "initial hardness, metric polynomial",
  evidence: "standard",
  inputs: {
    carbon: { label: "carbon in austenite", unit: "%", min: 0.1, max: 1.15 },
    ...elements({
      Mn: [0, 2],
      Si: [0, 2.2],
      Ni: [0, 3.5],
      Cr: [0, 1.8],
      Mo: [0, 0.6],
      V: [0, 0.3],
      W: [0, 0.6],
    }),
  },
  output: { label: "hardness as quenched", unit: "HRC" },
  error: { size: 3, unit: "HRC", kind: "half-width that covers 90 % of values not used, fully martensitic" },
});

/** Hardness of martensite above 0.60 % C. */
export const HIGH_CARBON_HARDNESS = relation({
  ...INITIAL_HARDNESS,
  title: "Hardness of martensite above 0.60 % C, less 0.15 HRC per % retained austenite",
  source: "martensite-above-0.60",
  locator: "exponential approach to 69.0 HRC",
  evidence: "fitted",
});

const JOIN_CARBON = 0.6;
const LIMIT_HRC = 69;

/**
 * Hardness of martensite without retained austenite, continuous at 0.60 % C.
 *
 * @param carbon - Carbon of the martensite [mass %]
 * @returns [HRC]
 * Limits: none are checked here; the relations give theirs.
 * Error and source: {@link INITIAL_HARDNESS}, {@link HIGH_CARBON_HARDNESS}.
 */
export function martensiteHardness(carbon: number): number {
  if (carbon <= JOIN_CARBON) return initialHardness(carbon);
  return LIMIT_HRC - (LIMIT_HRC - initialHardness(JOIN_CARBON)) * Math.exp(-(carbon - JOIN_CARBON) / 0.2);
}

/** As-quenched hardness with where it comes from. */
export interface Quenched {
  /** Hardened through, before any temper [HRC]. */
  readonly hrc: number;
  /** Hardening temperature it holds for [°C]. */
  readonly hardenC: number;
  /** Where the figure comes from. */
  readonly source: SourceKey;
}

const sheets = records(table, {
  grade: text,
  low: number,
  high: number,
  hrcLow: number,
  hrcHigh: number,
  source: sourceKey,
});

type Sheet = (typeof sheets)[number];

/** A sheet answers for hardening temperatures this near to its own [°C]. */
const NEAR_C = 15;

function refuseTemperature(name: string, held: readonly Sheet[], hardenC: number): never {
  const temperatures = held.map(({ low, high }) =>
    low === high ? temperatureText(low) : `${temperatureText(low)} to ${temperatureText(high)}`,
  );
  const problem = `${temperatureText(hardenC)} is not among them`;
  throw new NotAvailable(
    `the hardness of ${name} as quenched is published for hardening at ${temperatures.join(", ")} only: ${problem}`,
  );
}

const sheetsByGrade = grouped(sheets, ({ grade }) => grade);

/** The sheets of a grade; where it has none, those of the near kin that lends. */
function sheetsOf(steel: Steel): readonly Sheet[] {
  return heldName(steel, (designation) => sheetsByGrade.get(designation)) ?? [];
}

function fromSheet(steel: Steel, hardenC: number | undefined): Quenched | null {
  const held = sheetsOf(steel);
  if (held.length === 0) return null;
  const asked = hardenC ?? (held.length > 1 ? usualHardening(steel).celsius : undefined);
  const sheet =
    asked === undefined
      ? held[0]
      : held.find(({ low, high }) => asked >= low - NEAR_C && asked <= high + NEAR_C);
  if (sheet === undefined && isMartensiticStainless(steel)) return null;
  if (sheet === undefined) refuseTemperature(steel.name, held, asked as number);
  const { low, high, hrcLow, hrcHigh, source } = sheet;
  return { hrc: (hrcLow + hrcHigh) / 2, hardenC: hardenC ?? (low + high) / 2, source };
}

function stainlessQuenched(steel: Steel, hardenC: number | undefined): Quenched {
  const at = hardenC ?? usualHardening(steel).celsius;
  return { hrc: stainlessLevel(steel, at), hardenC: at, source: STAINLESS_HARDNESS.source };
}

/**
 * Hardness of a blade that hardened through, straight from the quench.
 *
 * @param steel - A grade or an analysis, or its name.
 * @param hardenC - Hardening temperature [°C]; left out, the middle of the published window.
 * @param quenchToC - Coldest temperature straight after the quench [°C]; a freezer turns part of the austenite.
 * @returns Hardness [HRC], the hardening temperature used [°C] and the source.
 * @throws NotAvailable outside 0.10 to 1.15 % C in solution, above 1.8 % Cr unless the grade's own
 *   sheet prints it, and where `dissolvedAt` refuses.
 * Error and source: {@link INITIAL_HARDNESS}, {@link HIGH_CARBON_HARDNESS}, {@link STAINLESS_HARDNESS}.
 */
export function quenchedHardness(steel: SteelAsked, hardenC?: number, quenchToC = ROOM_C): Quenched {
  steel = steelAsked(steel);
  const atRoom = quenchedToRoom(steel, hardenC);
  if (quenchToC === ROOM_C) return atRoom;
  return { ...atRoom, hrc: atRoom.hrc + subZeroGain(steel, hardenC, quenchToC).hrc };
}

function quenchedToRoom(steel: Steel, hardenC: number | undefined): Quenched {
  const sheet = fromSheet(steel, hardenC);
  if (sheet !== null) return sheet;
  if (isMartensiticStainless(steel)) return stainlessQuenched(steel, hardenC);
  // Chromium first: it tells best why the relation for lean steels does not apply.
  checkElements(INITIAL_HARDNESS, steel.composition, ["Cr"]);
  checkElements(INITIAL_HARDNESS, steel.composition);
  const temperature = hardenC ?? usualHardening(steel).celsius;
  // Below 0.70 % C the answer does not depend on a temperature that nobody gave.
  const whole = hardenC === undefined && carbonOf(steel) < CARBIDE_CARBON;
  const inSolution = whole
    ? { carbon: carbonOf(steel), chromium: steel.composition.Cr }
    : dissolvedAt(steel, temperature);
  checkRange(INITIAL_HARDNESS, "carbon", inSolution.carbon);
  const austenite = { ...steel.composition, C: inSolution.carbon, Cr: inSolution.chromium };
  return {
    hrc: martensiteHardness(inSolution.carbon) - HRC_PER_PERCENT_AUSTENITE * retainedAustenite(austenite),
    hardenC: temperature,
    source: inSolution.carbon <= JOIN_CARBON ? "astm-a255" : "martensite-above-0.60",
  };
}

/** The relations behind `quenchedHardness` for a steel. */
export function quenchedRelations(steel: Steel): readonly Relation[] {
  const [sheet] = sheetsOf(steel);
  if (sheet === undefined && isMartensiticStainless(steel)) return [STAINLESS_HARDNESS];
  if (sheet !== undefined) {
    const { source, low, high } = sheet;
    return [
      {
        title: `Hardness of ${steel.name} as quenched`,
        source,
        locator: "hardness as quenched",
        evidence: "measured",
        inputs: {
          hardenC: { label: "hardening temperature", unit: "°C", min: low - NEAR_C, max: high + NEAR_C },
        },
        output: INITIAL_HARDNESS.output,
        error: { size: null, unit: "HRC", kind: "one sheet, not tested against another" },
      },
    ];
  }
  return [INITIAL_HARDNESS, HIGH_CARBON_HARDNESS];
}
