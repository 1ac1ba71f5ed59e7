import { usualHardening } from "../hardening/hardening-temperature";
import { differenceText, temperatureText } from "../quantity-text";
import { NotAvailable } from "../refusal";
import type { Steel } from "../steel/steel";
import { blendedCurve, type HardnessCurve } from "./curve";
import { curveRelation } from "./curve-relation";
import { CURVE_BANDS, type FittedCurve, type TableFit } from "./fits";
import { hollomonJaffe } from "./hollomon-jaffe";
import type { TemperModel } from "./model";
import { tableCurve } from "./table-curve";

/** A hardening temperature this near to the table's own is the same within any furnace. */
const SAME_HARDENING_C = 15;
/** Up to here the band widens by 1 HRC: M2 gains about 1 HRC in 40 °C of hardening temperature. */
const NEAR_HARDENING_C = 30;
const NEAR_HARDENING_HRC = 1;

/**
 * Half-width of a steelmaker's table above `CURVE_BANDS.bladeC` [HRC]: two sheets of O1 differ by up to 4, and those
 * of H13 by 3 either way.
 */
export const HOT_TABLE_HALF_WIDTH = 4.5;

/** The parameter was made on carbon and low-alloy steel; tables are only carried this far in time, h in all. */
const TABLE_HOURS = [0.5, 12] as const;

function curveOf(fit: TableFit): HardnessCurve {
  return tableCurve(fit.knots.map(([celsius, hrc]) => [hollomonJaffe(celsius, fit.hours), hrc]));
}

function spanText([low, high]: readonly [number, number]): string {
  return low === high ? temperatureText(low) : `${temperatureText(low)} to ${temperatureText(high)}`;
}

/** How far a hardening temperature is from that of a table, °C. */
function distance({ hardenC }: TableFit, given: number): number {
  if (hardenC === null) return 0;
  return Math.max(hardenC[0] - given, given - hardenC[1], 0);
}

function refuseHardening(steel: Steel, tables: readonly TableFit[], given: number): never {
  const at = tables.map(({ hardenC }) => spanText(hardenC ?? [given, given])).join(", ");
  throw new NotAvailable(
    `hardening temperature ${temperatureText(given)} is too far from that of the published table of ` +
      `${steel.name}, hardened from ${at}: no answer more than ${differenceText(NEAR_HARDENING_C)} away`,
  );
}

interface Chosen {
  readonly curve: HardnessCurve;
  readonly tables: readonly TableFit[];
  readonly wider: number;
}

function singleTable(steel: Steel, table: TableFit, given: number | undefined): Chosen {
  const away = given === undefined ? 0 : distance(table, given);
  if (given !== undefined && away > NEAR_HARDENING_C) refuseHardening(steel, [table], given);
  return { curve: curveOf(table), tables: [table], wider: away > SAME_HARDENING_C ? NEAR_HARDENING_HRC : 0 };
}

const hardenedFrom = ({ hardenC }: TableFit) => hardenC?.[0] ?? 0;

/** A table for each of several hardening temperatures: a straight line between the nearest two. */
function severalTables(steel: Steel, tables: readonly TableFit[], given: number): Chosen {
  const above = tables.findIndex((table) => hardenedFrom(table) >= given);
  const right = tables[above];
  const left = tables[Math.max(0, above - 1)];
  if (right === undefined || left === undefined || (above === 0 && hardenedFrom(right) !== given)) {
    return refuseHardening(steel, tables, given);
  }
  if (hardenedFrom(right) === given) return { curve: curveOf(right), tables: [right], wider: 0 };
  const share = (given - hardenedFrom(left)) / (hardenedFrom(right) - hardenedFrom(left));
  return { curve: blendedCurve(curveOf(left), curveOf(right), share), tables: [left, right], wider: 0 };
}

/**
 * The model of a steel that has only a steelmaker's table.
 *
 * @throws NotAvailable away from the table's own hardening temperature.
 */
export function tableModel(
  steel: Steel,
  fits: readonly FittedCurve[],
  hardenC: number | undefined,
): TemperModel {
  const tables = fits.filter((fit): fit is TableFit => fit.form === "table");
  const [first] = tables as [TableFit];
  const chosen =
    tables.length === 1
      ? singleTable(steel, first, hardenC)
      : severalTables(steel, tables, hardenC ?? usualHardening(steel).celsius);
  const spans = chosen.tables.map(({ temperC }) => temperC);
  const assumptions =
    chosen.wider > 0 ? ["hardened away from the temperature of its table: band widened"] : [];
  if (tables.length > 1 && hardenC === undefined) {
    assumptions.push(
      `hardening from ${temperatureText(usualHardening(steel).celsius)} taken, none was given`,
    );
  }
  return {
    steel,
    curve: chosen.curve,
    minC: Math.max(...spans.map(([low]) => low)),
    maxC: Math.min(...spans.map(([, high]) => high)),
    minHours: TABLE_HOURS[0],
    maxHours: TABLE_HOURS[1],
    halfWidthAt: (celsius) =>
      (celsius <= CURVE_BANDS.bladeC ? CURVE_BANDS.blade.halfWidth : HOT_TABLE_HALF_WIDTH) + chosen.wider,
    basisAt: () => `own table of ${first.id}`,
    assumptions,
    relations: chosen.tables.map(curveRelation),
  };
}
