import { readLiveWorkbook } from "../../workbook/file/read/live-workbook";
import type { Paper } from "../../workbook/model/workbook-data";
import { carriedOver, startsOf } from "../../workbook/sheets/carried-over";
import { planningFile } from "../../workbook/sheets/planning-file";
import { planningTemplate, USUAL_ROOM } from "../../workbook/sheets/planning-template";
import { EMPTY_DATA, exampleData } from "../../workbook/sheets/template-data";
import { readWhole, refuseExisting, writeWhole } from "../files";
import { readOptions, WrongArguments } from "../options";
import { counted } from "../remarks";
import { type Command, progressLine, STATUS, type Terminal } from "../run-command";

const MAX_LINES = 500;
const PAPERS: readonly Paper[] = ["A4", "letter"];

const USAGE = `Usage: template [--output FILE.xlsx]           write an empty planning workbook ("planning workbook.xlsx")
       template --lines N [--output FILE.xlsx]   with room for N lines of an order, 1 to ${MAX_LINES} (usually ${USUAL_ROOM})
       template --demo [--output FILE.xlsx]      filled with an invented run ("run R-07.xlsx")
       template --from OLD.xlsx --lines N        with what was typed in an older plan, room for N lines and for readings
                                                 of every start
       template --paper letter ...               for Letter and Tabloid instead of A4 and A3
       template --force ...                      write over a file that is there
A sheet for every step from the enquiry to the shipped lot. Its formulas need the add-in, the workbench or the
command recalc; its values show without.
Exit status: 0 done, 2 wrong arguments or a file refused.
`;

function linesAsked(given: string | undefined): number {
  if (given === undefined) return USUAL_ROOM;
  const lines = Number(given);
  if (!Number.isInteger(lines) || lines < 1 || lines > MAX_LINES)
    throw new WrongArguments(`--lines wants a whole number from 1 to ${MAX_LINES}, not "${given}"`);
  return lines;
}

function paperAsked(given = "A4"): Paper {
  const paper = PAPERS.find((each) => each.toLowerCase() === given.toLowerCase());
  if (paper === undefined) throw new WrongArguments(`--paper wants ${PAPERS.join(" or ")}, not "${given}"`);
  return paper;
}

async function run(given: readonly string[], terminal: Terminal): Promise<number> {
  const args = given.map((argument) => (argument === "-o" ? "--output" : argument));
  const { files, flags, values } = readOptions(args, {
    flags: ["demo", "force"],
    values: ["lines", "output", "from", "paper"],
  });
  if (files.length > 0) throw new WrongArguments(`name the file with --output, not by itself: ${files[0]}`);
  const isDemo = flags.has("demo");
  const output = values.output ?? (isDemo ? "run R-07.xlsx" : "planning workbook.xlsx");
  refuseExisting(output, flags.has("force"));
  const data = isDemo ? exampleData() : EMPTY_DATA;
  const old = values.from === undefined ? undefined : readLiveWorkbook(readWhole(values.from).bytes);
  const starts = old === undefined ? 0 : startsOf(old);
  const empty = planningTemplate(data, linesAsked(values.lines), undefined, paperAsked(values.paper), starts);
  const model = old === undefined ? empty : carriedOver(empty, old);
  progressLine("template", terminal)("calculating");
  const bytes = await planningFile(model);
  writeWhole(output, bytes);
  terminal.write(
    `${output}: ${counted(model.sheets.length, "sheet")} and the lists, ${bytes.length} bytes\n`,
  );
  return STATUS.done;
}

export const template: Command = { name: "template", usage: USAGE, run };
