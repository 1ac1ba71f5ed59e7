import { attemptOr, InvalidValue } from "../../core/refusal";
import { findSteel } from "../../core/steel/find";
import { columnLetters } from "../../formula/addresses";
import { quotedSheet } from "../../formula/sheet-names";
import { parseMeasure } from "../../functions/measure";
import type { HostPort, HostRows, HostValue } from "../../host/port";
import type { Dot } from "../charts/band-chart";

/** A temper with its unit, if any, and what was read after it: "200 61", "400 F 60.5". */
const COUPON = /^(\d+(?:[.,]\d+)?\s*(?:°?[CF])?)\s+(\d+(?:[.,]\d+)?)(?:\s*HRC)?$/i;

/**
 * Coupons as typed: temper and reading, one coupon from the next by a semicolon.
 *
 * @throws InvalidValue naming what is no coupon.
 */
export function typedCoupons(text: string): Dot[] {
  const parts = text.split(";").map((part) => part.trim());
  return parts
    .filter((part) => part !== "")
    .map((part) => {
      const [, temper, hrc] = COUPON.exec(part) ?? [];
      if (temper === undefined || hrc === undefined)
        throw new InvalidValue(
          `"${part}" is no coupon: give its temper in °C and its reading in HRC, as 200 61; 230 59.5`,
        );
      return { x: parseMeasure(temper, "temperature", "°C"), y: Number(hrc.replace(",", ".")) };
    });
}

const LAST_ROW = 504;
const LAST_COLUMN = columnLetters(51);

/** A table of the workbook: its sheet, the row of its headings as one counts them. */
interface Table {
  readonly sheet: string;
  readonly headings: number;
}

const LINES: Table = { sheet: "Lines", headings: 4 };
const READINGS: Table = { sheet: "Hardness readings", headings: 4 };

const text = (value: HostValue | undefined): string =>
  value === null || value === undefined || typeof value === "object" ? "" : String(value).trim();

/** Columns of a table by their headings; `null` where the workbook has no such table. */
async function columnsOf(
  port: HostPort,
  { sheet, headings }: Table,
  wanted: readonly string[],
): Promise<string[][] | null> {
  const own = quotedSheet(sheet);
  const [heads] = await port.readValues([`${own}!A${headings}:${LAST_COLUMN}${headings}`], `${own}!A1`);
  const names = heads?.[0]?.map(text) ?? [];
  const places = wanted.map((name) => names.indexOf(name));
  if (places.includes(-1)) return null;
  const cells = places.map((at) => {
    const letter = columnLetters(at);
    return `${own}!${letter}${headings + 1}:${letter}${LAST_ROW}`;
  });
  const columns = await port.readValues(cells, `${own}!A1`);
  return columns.map((rows: HostRows | null) => rows?.map(([cell]) => text(cell)) ?? []);
}

const celsius = (temper: string) => attemptOr(undefined, () => parseMeasure(temper, "temperature", "°C"));
const designation = (steel: string) => attemptOr("", () => findSteel(steel).name);

/** Readings of blades of a steel, each at the temper of its line. */
async function bladeReadings(port: HostPort, steel: string): Promise<Dot[]> {
  const lines = await columnsOf(port, LINES, ["Line", "Steel", "Temper °C"]);
  const read = await columnsOf(port, READINGS, ["Line", "Mean HRC"]);
  const [names = [], steels = [], tempers = []] = lines ?? [];
  const [of = [], means = []] = read ?? [];
  return of.flatMap((name, at) => {
    const line = name === "" ? -1 : names.indexOf(name);
    const [x, y] = [celsius(tempers[line] ?? ""), Number(means[at] || Number.NaN)];
    const isOfIt = line >= 0 && designation(steels[line] ?? "") === steel;
    return isOfIt && x !== undefined && Number.isFinite(y) ? [{ x, y }] : [];
  });
}

/** The first cells of the sheet of coupons: its steel, and below it the coupons. */
const COUPON_CELLS = "Coupons!A1:B60";

async function coupons(port: HostPort, steel: string): Promise<Dot[]> {
  const [cells] = await port.readValues([COUPON_CELLS], "Coupons!A1");
  const rows = cells?.map((row) => row.map(text)) ?? [];
  const isOfIt = rows.some(([name = "", value = ""]) => name === "Steel" && designation(value) === steel);
  const first = rows.findIndex(([name, reading]) => name === "Temper °C" && reading === "Reading HRC");
  if (!isOfIt || first < 0) return [];
  // Between the headings and the coupons stands who fills the column.
  const below = rows.slice(first + 2);
  const end = below.findIndex(([name = ""]) => Number.isNaN(Number(name)));
  return below.slice(0, end < 0 ? undefined : end).flatMap(([temper = "", hrc = ""]) => {
    const x = temper === "" ? undefined : celsius(temper);
    return x === undefined || hrc === "" || Number.isNaN(Number(hrc)) ? [] : [{ x, y: Number(hrc) }];
  });
}

/** What the workbook knows of a steel by its own readings: coupons, and blades at the tempers of their lines. */
export async function ownReadings(port: HostPort, steel: string): Promise<Dot[]> {
  const name = designation(steel);
  if (!port.hasSheet || name === "") return [];
  const found = [coupons(port, name), bladeReadings(port, name)].map((asked) => asked.catch((): Dot[] => []));
  return (await Promise.all(found)).flat();
}
