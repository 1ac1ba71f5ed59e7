import { cellName } from "../../../formula/addresses";
import type { SheetModel } from "../../model/sheet-model";
import {
  FORMAT,
  filled,
  fixedName,
  heading,
  helperSheet,
  note,
  type Row,
  title,
  typed,
  worked,
} from "../parts/sheet-parts";
import type { Run } from "../run-r07/run";
import { planningCell } from "./planning-sheet";

const FIRST = 3;

const COMPOSITION_HEADINGS = ["Element", "Low %", "High %", "Typical %"];
const EVIDENCE_HEADINGS = [
  "Hardness after temper rests on",
  "Source",
  "Range it may be used over",
  "Expected error",
  "Kind of evidence",
  "Composition used",
];

/** No grade of the library limits more elements than this. */
const ELEMENTS = 14;

/** Steel and temper of each line, taken over from the planning sheet, and one formula that fills five columns beside them. */
function temperedRows(run: Run, sheet: string): Row[] {
  const last = FIRST + run.lines.length - 1;
  const column = (index: number) => `${cellName(FIRST, index)}:${cellName(last, index)}`;
  return run.lines.map((_, line) => [
    worked(`='${sheet}'!${planningCell(line, "steel")}`),
    worked(`='${sheet}'!${planningCell(line, "temperC")}`, FORMAT.whole),
    line === 0
      ? worked(`=BLADE.TEMPERED_RANGE(${column(0)},${column(1)})`, FORMAT.whole)
      : filled(FORMAT.whole),
    filled(FORMAT.whole),
    filled(FORMAT.whole),
    filled(),
    filled(),
  ]);
}

/** Composition and evidence of the steel in one cell: two formulas, each filling the cells beside and below it. */
function askedRows(steel: string): Row[] {
  const figures = [filled(FORMAT.massPercent), filled(FORMAT.massPercent), filled(FORMAT.massPercent)];
  const first = [
    worked(`=BLADE.COMPOSITION(${steel})`),
    ...figures,
    undefined,
    worked(`=BLADE.EVIDENCE("TEMPERED_RANGE",${steel})`),
  ];
  return [first, ...Array.from({ length: ELEMENTS - 1 }, () => [filled(), ...figures])];
}

/**
 * Helper sheet on the steels of a run: hardness after temper of every line from one formula, and the
 * composition and the evidence for one steel that is typed in.
 */
export function steelsSheet(run: Run, planning: string): SheetModel {
  const lines = temperedRows(run, planning);
  const asked = FIRST + lines.length + 2;
  const steel = fixedName(asked, 1);
  const rows: Row[] = [
    [title("Hardness after temper, line by line")],
    [note("One formula fills the whole block: change a steel or a temper on the planning sheet.")],
    ["Steel", "Temper °C", "HRC low", "HRC likely", "HRC high", "Basis", "Caution"].map(heading),
    ...lines,
    [],
    [title("One steel: what it is made of, and what its figures rest on")],
    [heading("Steel"), typed(run.lines[0]?.steel ?? ""), note("type another grade here")],
    [...COMPOSITION_HEADINGS.map(heading), undefined, ...EVIDENCE_HEADINGS.map(heading)],
    ...askedRows(steel),
  ];
  return helperSheet("Steels of the run", rows, {
    columnWidths: [84, 74, 74, 80, 72, 250, 420, 300, 200, 120, 300],
    rowHeights: { 0: 28, [FIRST - 1]: 36, [asked - 1]: 28, [asked + 1]: 36 },
  });
}
