import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import fits from "../../src/core/tempering/fits.json";
import lowAlloy from "../../src/data/hardness/iso-18265-low-alloy.json";
import { handMade } from "../workbook/hand-made";
import { median, timed } from "./measure";

type Line = readonly [what: string, figure: string, budget: string];

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

function workbook(hardness: (cell: string) => string, vickers: (cell: string) => string): Uint8Array {
  const rows = Array.from({ length: ROWS }, (_, row) => {
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

function csvOf(folder: string, file: string): void {
  const profile = `-env:UserInstallation=${pathToFileURL(join(folder, "profile"))}`;
  spawnSync("soffice", [profile, "--headless", "--convert-to", "csv", "--outdir", folder, file]);
}

function recalculated(folder: string): void {
  const files = ["--output", join(folder, "done.xlsx"), join(folder, "ours.xlsx")];
  const { status, stderr } = spawnSync(process.execPath, [
    "src/cli/start.cjs",
    "src/cli/recalc.ts",
    ...files,
  ]);
  if (status !== 0) throw new Error(String(stderr));
}

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
export function besideLibreOffice(): Line[] {
  if (spawnSync("soffice", ["--version"]).status !== 0)
    return [["recalc beside LibreOffice", "no soffice here", ""]];
  const folder = mkdtempSync(join(tmpdir(), "blade-bench-"));
  try {
    writeFileSync(join(folder, "native.xlsx"), workbook(polynomial, lookUp));
    const ours = workbook(
      (cell) => `_xldudf_BLADE_TEMPERED_HRC("1045",${cell})`,
      (cell) => `_xldudf_BLADE_HARDNESS(${cell},"HRC","HV")`,
    );
    writeFileSync(join(folder, "ours.xlsx"), ours);
    csvOf(folder, join(folder, "native.xlsx"));
    recalculated(folder);
    const turns = Array.from({ length: 3 }, () => {
      const native = timed(() => csvOf(folder, join(folder, "native.xlsx")));
      return [timed(() => recalculated(folder)), native] as const;
    });
    const [hrc, hv] = differences(folder);
    const seconds = (median(turns.map(([own]) => own)) / 1000).toFixed(1);
    return [
      [
        `recalc of ${2 * ROWS} formulas beside LibreOffice's own formulas`,
        `${median(turns.map(([own, native]) => own / native)).toFixed(2)} ×`,
        "",
      ],
      [`recalc of ${2 * ROWS} formulas, with start-up`, `${seconds} s`, "≤ 10 s for 20,000"],
      ["largest difference of the two, HRC and HV", `${hrc.toFixed(2)} HRC, ${hv.toFixed(1)} HV`, ""],
    ];
  } finally {
    if (existsSync(folder)) rmSync(folder, { recursive: true });
  }
}
