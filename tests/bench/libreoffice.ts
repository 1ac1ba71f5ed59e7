import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import fits from "../../src/core/tempering/fits.json";
import lowAlloy from "../../src/data/hardness/iso-18265-low-alloy.json";
import { handMade } from "../workbook/hand-made";
import type { BenchLine } from "./line";
import { median } from "./measure";
import { command, programTime } from "./processes";

const ROWS = 20_000;
const temperAt = (row: number) => 150 + (row % 450);
const hrcAt = (row: number) => 30 + (row % 300) / 10;

/** The cubic that the library holds for 1045, written out in the sheet's own functions. */
function polynomial(cell: string): string {
  const curve = fits.curves.find(({ id }) => id === "1045");
  if (curve === undefined) throw new Error("no curve of 1045");
  const [a, b, c, d] = curve.coefficients ?? [];
  const x = `((${cell}+273.15)*(18+LOG10(2))/1000-${curve.centre})`;
  return `${a}+${x}*(${b}+${x}*(${c}+${x}*(${d})))`;
}

const columnOf = (scale: string) => lowAlloy.columns.findIndex(([name]) => name === scale);

/** Rows that print both scales. */
const pairs = lowAlloy.rows
  .map((row) => [row[columnOf("HRC")], row[columnOf("HV")]])
  .filter((pair): pair is [number, number] => pair.every((value) => typeof value === "number"))
  .sort(([a], [b]) => a - b);

/** A straight line between two rows of the table on the second sheet. */
function lookUp(cell: string): string {
  const at = `MATCH(${cell},T!$A$1:$A$${pairs.length},1)`;
  const hrc = (step: number) => `INDEX(T!$A$1:$A$${pairs.length},${at}+${step})`;
  const hv = (step: number) => `INDEX(T!$B$1:$B$${pairs.length},${at}+${step})`;
  return `${hv(0)}+(${cell}-${hrc(0)})/(${hrc(1)}-${hrc(0)})*(${hv(1)}-${hv(0)})`;
}

function workbook(
  count: number,
  hardness: (cell: string) => string,
  vickers: (cell: string) => string,
): Uint8Array {
  const rows = Array.from({ length: count }, (_, row) => {
    const n = row + 1;
    const cells = [
      `<c r="A${n}"><v>${temperAt(row)}</v></c><c r="B${n}"><v>${hrcAt(row)}</v></c>`,
      `<c r="C${n}"><f>${hardness(`A${n}`)}</f></c><c r="D${n}"><f>${vickers(`B${n}`)}</f></c>`,
    ];
    return `<row r="${n}">${cells.join("")}</row>`;
  });
  const table = pairs.map(
    ([hrc, hv], row) =>
      `<row r="${row + 1}"><c r="A${row + 1}"><v>${hrc}</v></c><c r="B${row + 1}"><v>${hv}</v></c></row>`,
  );
  const data = (inside: readonly string[]) => `<sheetData>${inside.join("")}</sheetData>`;
  return handMade({ sheets: { S: data(rows), T: data(table) } });
}

/** Processor time of LibreOffice opening a file, working it out and writing it as text. */
function csvOf(folder: string, file: string): number {
  const profile = `-env:UserInstallation=${pathToFileURL(join(folder, "profile"))}`;
  return programTime("soffice", [profile, "--headless", "--convert-to", "csv", "--outdir", folder, file]);
}

const recalculated = (folder: string) =>
  command("recalc", ["--force", "--output", join(folder, "done.xlsx"), join(folder, "ours.xlsx")]);

/** Largest difference between the two programs' columns, hardness and Vickers. */
function differences(folder: string): [number, number] {
  const native = readFileSync(join(folder, "native.csv"), "utf8").trim().split("\n");
  csvOf(folder, join(folder, "done.xlsx"));
  const ours = readFileSync(join(folder, "done.csv"), "utf8").trim().split("\n");
  if (native.length !== ROWS || ours.length !== ROWS) throw new Error("rows are missing");
  const apart = (column: number) =>
    native.reduce((most, line, row) => {
      const values = [line, ours[row] ?? ""].map((text) => Number(text.split(",")[column]));
      return Math.max(most, Math.abs((values[0] ?? Number.NaN) - (values[1] ?? Number.NaN)));
    }, 0);
  return [apart(2), apart(3)];
}

/** The same polynomial and table look-up worked out by LibreOffice and by our recalculation, start-up included. */
export function besideLibreOffice(): BenchLine[] {
  if (spawnSync("soffice", ["--version"]).status !== 0) throw new Error("there is no soffice here");
  const folder = mkdtempSync(join(tmpdir(), "blade-bench-"));
  try {
    writeFileSync(join(folder, "native.xlsx"), workbook(ROWS, polynomial, lookUp));
    const write = (rows: number) =>
      writeFileSync(
        join(folder, "ours.xlsx"),
        workbook(
          rows,
          (cell) => `_xldudf_BLADE_TEMPERED_HRC("1045",${cell})`,
          (cell) => `_xldudf_BLADE_HARDNESS(${cell},"HRC","HV")`,
        ),
      );
    write(1);
    // The first call makes the command's bundle, which takes more memory than the work itself.
    recalculated(folder);
    const start = recalculated(folder);
    write(ROWS);
    csvOf(folder, join(folder, "native.xlsx"));
    const turns = Array.from({ length: 3 }, () => {
      const native = csvOf(folder, join(folder, "native.xlsx"));
      return { native, own: recalculated(folder) };
    });
    const [hrc, hv] = differences(folder);
    const what = `recalc of ${2 * ROWS} formulas`;
    const memory = Math.min(...turns.map(({ own }) => own.memory));
    return [
      {
        what: `${what} beside LibreOffice's own formulas, start-up of both included`,
        value: median(turns.map(({ own, native }) => own.cpu / native)),
        unit: "×",
        budget: 3,
      },
      { what, value: Math.min(...turns.map(({ own }) => own.cpu)) / 1000, unit: "s" },
      {
        what: `${what}, memory each`,
        value: ((memory - start.memory) * 1024) / (2 * ROWS),
        unit: "kB",
        budget: 5,
      },
      { what: "largest difference of the two", value: hrc, unit: "HRC" },
      { what: "largest difference of the two", value: hv, unit: "HV" },
    ];
  } finally {
    if (existsSync(folder)) rmSync(folder, { recursive: true });
  }
}
