import table from "../../data/hardening/carbides.json";
import { attempt, attemptOr, NotAvailable, Refusal } from "../refusal";
import { type Relation, relation } from "../relation";
import { carbonOf } from "../steel/carbon";
import { findSteel } from "../steel/find";
import { heldName, lenderOf } from "../steel/kin";
import type { Steel } from "../steel/steel";
import { allTwins } from "../steel/twins";
import { number, records, text } from "../table";
import { CARBIDE_CARBON, dissolvedAt, dissolvedRelations } from "./dissolved";
import { usualHardening } from "./hardening-temperature";
import { DISSOLVED_HIGH_CHROMIUM, type Dissolved } from "./high-chromium";
import { solutionAt } from "./max-section";

/** What a hardened steel holds beside its martensite. */
export interface Carbides {
  /** Carbide that did not dissolve [volume %]. */
  readonly volume: number;
  /** Carbon in solution at the hardening temperature [mass %]. */
  readonly dissolvedCarbon: number;
  readonly isRecalled: boolean;
}

/** Carbide by mass balance. */
const CARBIDE_VOLUME = relation({
  title: "Carbide left at the hardening temperature",
  source: "carbide-equilibrium",
  locator: "mass balance of carbon and chromium between austenite and M3C, M7C3, M23C6 and vanadium carbide",
  evidence: "fitted",
  inputs: {},
  output: { label: "carbide", unit: "volume %" },
  error: {
    size: 3,
    unit: "volume %",
    kind: "about, against recalled figures of six grades; equilibrium, so a lower limit for a short soak",
  },
  note: "M7C3 or M23C6 by the share of chromium to carbon in what is left.",
});

/** The same from memory, for steels whose carbides no relation here covers. */
const CARBIDES_RECALLED = relation({
  ...CARBIDE_VOLUME,
  source: "carbides-recalled",
  locator: table.locator,
  evidence: "compiled",
  error: { size: 3, unit: "volume %", kind: "recalled, medium confidence" },
  note: table.note,
});

const recalled = new Map(
  records(table, { grade: text, volume: number, carbon: number }).map((row) => [row.grade, row]),
);

/** Carbon [mass %] and density [g/cm³] of each carbide, from the cells of the pure compounds. */
const M3C = { carbon: 6.7, density: 7.68 };
const VC = { carbon: 19.1, density: 5.7 };
const M7C3 = { carbon: 8.7, density: 6.95 };
const M23C6 = { carbon: 5.6, density: 7 };
const AUSTENITE_DENSITY = 7.75;
/** Chromium to carbon that leave the austenite with each: half chromium in M7C3, six tenths in M23C6. */
const RATIO = { M7C3: 5.8, M23C6: 9.4 };

const volumeOf = (massPercent: number, density: number) => (massPercent * AUSTENITE_DENSITY) / density;

/** Mass % of a carbide that holds the carbon which is not in solution. */
function massOf(tiedUp: number, carbon: number, inSolution: number): number {
  return (100 * tiedUp) / (carbon - inSolution);
}

function chromiumCarbide(steel: Steel, carbon: number, dissolved: Dissolved): number {
  const tiedUp = carbon - dissolved.carbon;
  if (tiedUp <= 0) return 0;
  const ratio = (steel.composition.Cr - dissolved.chromium) / tiedUp;
  const share = Math.min(1, Math.max(0, (ratio - RATIO.M7C3) / (RATIO.M23C6 - RATIO.M7C3)));
  const held = M7C3.carbon + share * (M23C6.carbon - M7C3.carbon);
  const density = M7C3.density + share * (M23C6.density - M7C3.density);
  return volumeOf(massOf(tiedUp, held, dissolved.carbon), density);
}

/** From here up vanadium carbide outlasts the hardening temperature of lean steels [mass %]. */
const LASTING_VANADIUM = 0.1;

function leanCarbide({ composition: { V } }: Steel, carbon: number, dissolved: Dissolved): number {
  // Below 0.70 % C the relation counts all carbon as dissolved, vanadium carbide and all.
  const inVanadium = V >= LASTING_VANADIUM ? Math.min(0.2 * V, carbon - dissolved.carbon) : 0;
  const cementite = massOf(carbon - dissolved.carbon - inVanadium, M3C.carbon, dissolved.carbon);
  const vanadium = massOf(inVanadium, VC.carbon, dissolved.carbon);
  return volumeOf(Math.max(0, cementite), M3C.density) + volumeOf(Math.max(0, vanadium), VC.density);
}

const isHighChromium = ({ composition }: Steel) => composition.Cr >= DISSOLVED_HIGH_CHROMIUM.inputs.Cr.min;

/** Up to this chromium a steel below 0.70 % C holds no carbide once it is hard, but for that of vanadium [mass %]. */
const LEAN_CHROMIUM = 3;

/** What is in solution at the usual hardening temperature; a steel below 0.70 % C is taken as above its Ac3. */
function usuallyDissolved(steel: Steel, carbon: number): Dissolved {
  const { Cr } = steel.composition;
  if (carbon < CARBIDE_CARBON && Cr < LEAN_CHROMIUM) return { carbon, chromium: Cr };
  const { celsius } = usualHardening(steel);
  return isHighChromium(steel) ? dissolvedAt(steel, celsius) : solutionAt(steel, celsius);
}

function byBalance(steel: Steel, hardenC: number | undefined): Carbides {
  const carbon = carbonOf(steel);
  const dissolved = hardenC === undefined ? usuallyDissolved(steel, carbon) : dissolvedAt(steel, hardenC);
  const volume = isHighChromium(steel)
    ? chromiumCarbide(steel, carbon, dissolved)
    : leanCarbide(steel, carbon, dissolved);
  return { volume, dissolvedCarbon: dissolved.carbon, isRecalled: false };
}

/** The near grade, else the twin, whose carbides stand in for a steel that no relation covers. */
function lent(steel: Steel, refused: Refusal): Carbides {
  const lender = lenderOf(steel);
  if (lender !== undefined) return byBalance(findSteel(lender.designation), undefined);
  const twins = allTwins().find(({ all }) => all.includes(steel))?.all ?? [];
  const known = twins.map((twin) => attemptOr(undefined, () => ownCarbides(twin, undefined)));
  return known.find((each) => each !== undefined) ?? orThrow<Carbides>(refused);
}

/** As recalled for the grade, else worked out from its analysis. */
function ownCarbides(steel: Steel, hardenC: number | undefined): Carbides {
  const held = heldName(steel, (designation) => recalled.get(designation));
  if (held === undefined) return byBalance(steel, hardenC);
  if (hardenC === undefined) return { volume: held.volume, dissolvedCarbon: held.carbon, isRecalled: true };
  throw new NotAvailable(
    `the carbide of ${steel.name} is held for its usual hardening temperature only: leave harden C out`,
  );
}

/**
 * Carbide that stays undissolved when a steel is hardened, and the carbon that does dissolve.
 *
 * @param steel - A grade or an analysis.
 * @param hardenC - Hardening temperature [°C]; the usual one of the steel where left out.
 * @returns Volume % to about 3 either way, an equilibrium figure: a short soak leaves more.
 * @throws NotAvailable where neither a relation nor a recalled figure covers the steel.
 */
export function carbidesAt(steel: Steel, hardenC?: number): Carbides {
  const found = attempt(() => ownCarbides(steel, hardenC));
  return found instanceof Refusal && hardenC === undefined ? lent(steel, found) : orThrow(found);
}

function orThrow<T>(found: T | Refusal): T {
  if (found instanceof Refusal) throw found;
  return found;
}

/** The relations behind `carbidesAt` for a steel. */
export function carbideRelations(steel: Steel | null): readonly Relation[] {
  if (steel === null) return [CARBIDE_VOLUME, CARBIDES_RECALLED];
  const isHeld = heldName(steel, (designation) => recalled.get(designation)) !== undefined;
  return isHeld ? [CARBIDES_RECALLED] : [CARBIDE_VOLUME, ...dissolvedRelations(steel)];
}
