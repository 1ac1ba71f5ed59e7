import table from "../../data/hardening/air-hardening.json";
import { quantityText } from "../quantity-text";
import { relation } from "../relation";
import { heldName } from "../steel/kin";
import type { Steel } from "../steel/steel";
import { number, oneOf, records, text } from "../table";
import { isMartensiticStainless } from "./stainless";

/** Quenches that only air-hardening steels harden in, slowest first. */
export const AIRS = ["still air", "fan air", "plates", "gas"] as const;

export type Air = (typeof AIRS)[number];

/** Sections that harden through in air. */
export const AIR_HARDENING = relation({
  title: "Thickest section that hardens through in still air",
  source: "air-hardening-statements",
  locator: table.locator,
  evidence: "compiled",
  inputs: {},
  output: { label: "section", unit: "mm" },
  error: { size: 1.5, unit: "times", kind: "factor either way; sheets of one grade differ by as much" },
  note:
    "Stainless steels of 10.5 to 18 % Cr: 25 mm by the usual advice; pearlite starts after 80 to 180 s, and a blade of 6 mm " +
    "passes 800 to 600 °C in still air in well under 100 s. A slow quench leaves carbide on the grain boundaries, which costs rust resistance and toughness.",
});

const statements = new Map(
  records(table, { grade: text, mm: number, seen: oneOf(["READ", "MEMORY"] as const) }).map((row) => [
    row.grade,
    row.mm,
  ]),
);

/** Usual advice for stainless steels; thicker pieces want a fan, gas or oil [mm]. */
const STAINLESS_MM = 25;

/**
 * Thickest section of a steel that hardens through in still air.
 *
 * @returns mm; `undefined` for a steel that needs oil or water.
 */
export function airHardeningMm(steel: Steel): number | undefined {
  const stated = heldName(steel, (designation) => statements.get(designation));
  return stated ?? (isMartensiticStainless(steel) ? STAINLESS_MM : undefined);
}

/** What is said with such a section. */
export function airHardeningNote(quench: string, mm: number): string {
  const faster = quench === "still air" ? "" : `; ${quench} is at least as fast`;
  return `hardens through any blade section in still air, to about ${quantityText(mm, "mm")} by published statement${faster}`;
}

/** What is said of a steel that needs a faster quench. */
export function notInAir({ name }: Steel, quench: string): string {
  return `${name} does not harden in ${quench}: it needs oil or water`;
}
