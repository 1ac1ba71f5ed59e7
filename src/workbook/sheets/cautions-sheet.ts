import cautions from "../../data/run/cautions.json";
import { functionNamed } from "../../functions/catalogue";
import type { SheetModel } from "../model/sheet-model";
import { heading, helperSheet, note, type Row, title, typed, words } from "./parts/sheet-parts";

/** Functions that the workbook's estimates rest on, and whether their evidence is asked of a steel. */
const ASKED: readonly (readonly [name: string, ofSteel: boolean])[] = [
  ["TEMPERED_RANGE", true],
  ["TEMPER_FOR", true],
  ["HARDENING", true],
  ["MAX_SECTION", true],
  ["BAND", false],
  ["ASSESS", true],
  ["CERTIFICATE", true],
  ["TEST_THICKNESS", false],
  ["SAMPLE_PLAN", false],
  ["MASS", true],
  ["STARTS", false],
  ["STEEL_ORDER", true],
  ["LEARNING", false],
  ["FURNACE", false],
  ["OIL_RISE", false],
  ["YIELD_FLOOR", false],
];

const STEEL = 2;
const NAMED = `$B$${STEEL + 1}`;

function evidenceRow([name, ofSteel]: (typeof ASKED)[number]): Row {
  const call = ofSteel ? `BLADE.EVIDENCE("${name}",${NAMED})` : `BLADE.EVIDENCE("${name}")`;
  const cell = (column: number) => {
    const formula = `INDEX(${call},1,${column})`;
    return words(ofSteel ? `=IF(${NAMED}="","",${formula})` : `=${formula}`);
  };
  return [words(functionNamed(name)?.summary ?? name), cell(1), cell(2), cell(3), cell(4), cell(5)];
}

/** Where the figures come from, and what may hurt on the way. */
export function cautionsSheet(steel: string): SheetModel {
  const rows: Row[] = [
    [title("Sources: what the figures rest on")],
    [note("The first relation of each answer; type another steel to see its own. The pane shows the rest.")],
    [heading("Steel"), typed(steel)],
    [],
    ["What it tells", "Rests on", "Source", "Range it may be used over", "Expected error", "Kind"].map(
      heading,
    ),
    ...ASKED.map(evidenceRow),
    [],
    [title("Cautions by step")],
    [
      note(
        "Limits are those of the United States unless another place is named. What is recalled must be looked up before it is relied on.",
      ),
    ],
    ["Step", "Hazard", "What to do", "Rule that was read", "Rule that is recalled"].map(heading),
    ...cautions.rows.map((row): Row => row.map((text) => words(text))),
    [],
    [note("Nothing here is legal or safety advice: follow local codes and licensed practice.")],
  ];
  return helperSheet("Cautions and sources", rows, {
    columnWidths: [170, 230, 230, 230, 150, 90],
    rowHeights: { 0: 28 },
    print: { landscape: true },
  });
}
