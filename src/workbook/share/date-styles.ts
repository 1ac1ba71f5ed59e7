import { relationshipsOf } from "../file/package/relationships";
import { walkXml } from "../file/package/xml";
import type { LiveWorkbook } from "../file/read/live-workbook";

/** How a number is shown: as a day, a time of day, both, or as a number. */
export type Moment = "date" | "time" | "both" | undefined;

/** Formats known by number alone (ECMA-376 Part 1, 18.8.30). */
const BUILT_IN: Readonly<Record<number, Moment>> = {
  14: "date",
  15: "date",
  16: "date",
  17: "date",
  18: "time",
  19: "time",
  20: "time",
  21: "time",
  22: "both",
  45: "time",
  47: "time",
};

/** Quoted words, single letters after a backslash, fillers, colours and currencies are no part of the pattern. */
const ASIDE = /"[^"]*"|\\.|[_*].|\[(?!h+\]|m+\]|s+\])[^\]]*\]/gi;

/** How a number with this number format is shown. */
export function momentOf(code: string): Moment {
  const pattern = (code.split(";")[0] ?? "").replace(ASIDE, "");
  // A time that runs beyond a day is a length of time; it stays a number.
  if (/\[[hms]+\]/i.test(pattern) || /general/i.test(pattern)) return undefined;
  const hasDay = /[dy]/i.test(pattern) || (/m/i.test(pattern) && !/[hs]/i.test(pattern));
  const hasTime = /[hs]/i.test(pattern);
  if (hasDay) return hasTime ? "both" : "date";
  return hasTime ? "time" : undefined;
}

function readStyles(part: string, xml: string): Moment[] {
  const own = new Map<number, Moment>();
  const styles: number[] = [];
  let isInCells = false;
  walkXml(part, xml, {
    open({ name, attributes }) {
      const format = Number(attributes.numFmtId);
      if (name === "cellXfs") isInCells = true;
      else if (name === "numFmt") own.set(format, momentOf(attributes.formatCode ?? ""));
      else if (name === "xf" && isInCells) styles.push(format);
    },
    close(name) {
      if (name === "cellXfs") isInCells = false;
    },
  });
  return styles.map((format) => (own.has(format) ? own.get(format) : BUILT_IN[format]));
}

/** Tells by the style of a cell whether its number is shown as a day or a time. */
export function momentStyles({ file, main }: LiveWorkbook): (style: string | undefined) => Moment {
  const part = relationshipsOf(file, main.name).find(({ kind }) => kind === "styles")?.part;
  const moments = part === undefined || !file.has(part) ? [] : readStyles(part, file.text(part));
  return (style) => moments[Number(style ?? 0)];
}
