import { attempt, InvalidValue, Refusal } from "../../core/refusal";
import { parseMeasure } from "../../functions/measure";

/** Stations as lists of one length, mm. */
export interface StationLists {
  readonly x: readonly number[];
  readonly width: readonly number[];
  readonly thickness: readonly number[];
  /** One fuller on each side; 0 where there is none. */
  readonly fullerWidth: readonly number[];
  readonly fullerDepth: readonly number[];
}

/** Fittings as lists of one length. */
export interface FittingLists {
  /** g */
  readonly mass: readonly number[];
  /** Of its balance, in the x of the stations, mm */
  readonly position: readonly number[];
  /** About its own balance, kg m² */
  readonly inertia: readonly number[];
}

/** What stands on a line, how many figures it may hold, and how to give them. */
interface LineForm {
  readonly columns: readonly (readonly [quantity: "length" | "mass" | "number", unit: string])[];
  readonly counts: readonly number[];
  readonly form: string;
}

const MM = ["length", "mm"] as const;

const STATION: LineForm = {
  columns: [MM, MM, MM, MM, MM],
  counts: [3, 5],
  form: "give place, width and thickness in mm, such as 450 38 4.5, and behind them width and depth of a fuller if there is one",
};

const FITTING: LineForm = {
  columns: [["mass", "g"], MM, ["number", "kg m²"]],
  counts: [2, 3],
  form: "give mass in g and place in mm, such as 230 -160, and behind them its own inertia in kg m² if it is long",
};

/** Tabs, semicolons and spaces part figures; so does a comma with a space after it, never a decimal comma. */
const BETWEEN = /[\t;]|,?\s+|,$/;

function figures(line: string, number: number, { columns, counts, form }: LineForm): readonly number[] {
  const parts = line
    .trim()
    .split(BETWEEN)
    .filter((part) => part !== "");
  if (!counts.includes(parts.length)) {
    throw new InvalidValue(`line ${number}, "${line.trim()}", holds ${parts.length} figures: ${form}`);
  }
  return parts.map((part, at) => {
    const [quantity, unit] = columns[at] ?? MM;
    const found = attempt(() => parseMeasure(part, quantity, unit));
    if (found instanceof Refusal) throw new InvalidValue(`line ${number}: ${found.message}; ${form}`);
    return found;
  });
}

/** The columns of lines of figures; lines without any figure, such as headings, are passed over. */
function columnsOf(text: string, form: LineForm): readonly (readonly number[])[] {
  const rows = text
    .split(/\r?\n/)
    .map((line, at) => ({ line, number: at + 1 }))
    .filter(({ line }) => /\d/.test(line))
    .map(({ line, number }) => figures(line, number, form));
  return form.columns.map((_, index) => rows.map((row) => row[index] ?? 0));
}

/**
 * Reads stations as they are typed or pasted, one a line: place, width, thickness and, where there is
 * one, width and depth of the fuller. Decimal point or comma; a unit may stand directly after a figure.
 *
 * @throws InvalidValue naming the line that does not fit.
 */
export function readStations(text: string): StationLists {
  const [x = [], width = [], thickness = [], fullerWidth = [], fullerDepth = []] = columnsOf(text, STATION);
  if (x.length === 0) throw new InvalidValue(`no station is given: ${STATION.form}, one station a line`);
  return { x, width, thickness, fullerWidth, fullerDepth };
}

/**
 * Reads fittings, one a line: mass, place and, where it counts, inertia. None is as good as any.
 *
 * @throws InvalidValue naming the line that does not fit.
 */
export function readFittings(text: string): FittingLists {
  const [mass = [], position = [], inertia = []] = columnsOf(text, FITTING);
  return { mass, position, inertia };
}
