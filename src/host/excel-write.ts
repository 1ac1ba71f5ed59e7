import { freeSheetName } from "../formula/sheet-names";
import { oneUndoStep, writing } from "./excel-run";
import type { Block, LineChart, Place } from "./port";

const size = ({ rows }: Block) => ({ rows: rows.length, columns: rows[0]?.length ?? 0 });

/** Writes a formula into the selected cell. */
export async function insertFormula(formula: string): Promise<string> {
  const task = () =>
    Excel.run(async (context) => {
      const cell = context.workbook.getActiveCell();
      cell.load("address");
      cell.formulas = [[formula]];
      await context.sync();
      return cell.address;
    });
  return writing("the formula", task);
}

function blockAt(first: Excel.Range, block: Block): Excel.Range {
  const { rows, columns } = size(block);
  return first.getResizedRange(rows - 1, columns - 1);
}

/** Where a block would go, and how much stands there. */
export async function placeFor(block: Block): Promise<Place> {
  return Excel.run(async (context) => {
    const range = blockAt(context.workbook.getActiveCell(), block);
    range.load(["address", "formulas"]);
    await context.sync();
    const filled = range.formulas.flat().filter((content) => content !== "").length;
    return { address: range.address, filled };
  });
}

/** Writes a block and its chart; nothing is sent before the caller's next sync. */
function put(range: Excel.Range, block: Block, chart: LineChart | undefined): void {
  range.formulas = block.rows.map((row) => [...row]);
  for (let row = 0; row <= block.heading; row += 1) range.getRow(row).format.font.bold = true;
  range.format.verticalAlignment = "Top";
  if (chart !== undefined) draw(range, block, chart);
}

/** A chart of lines without marks, one for each column, beside the block. */
function draw(range: Excel.Range, block: Block, given: LineChart): void {
  const { worksheet } = range;
  const [first, last] = given.rows;
  const part = (column: number) => range.getCell(first, column).getBoundingRect(range.getCell(last, column));
  const [horizontal = 0, ...lines] = given.columns;
  const chart = worksheet.charts.add("XYScatterLinesNoMarkers", part(lines[0] ?? horizontal), "Columns");
  chart.title.text = given.title;
  chart.axes.categoryAxis.title.text = given.horizontal;
  chart.axes.valueAxis.title.text = given.vertical;
  chart.legend.position = "Bottom";
  for (const [at, column] of lines.entries()) {
    const line = at === 0 ? chart.series.getItemAt(0) : chart.series.add();
    line.name = String(block.rows[block.heading]?.[column] ?? "");
    line.setXAxisValues(part(horizontal));
    line.setValues(part(column));
  }
  const { columns } = size(block);
  chart.setPosition(range.getCell(0, columns - 1).getOffsetRange(0, 1));
}

/** Writes a block at the selected cell. */
export async function writeBlock(block: Block, chart?: LineChart): Promise<string> {
  const task = () =>
    Excel.run(oneUndoStep(), async (context) => {
      const range = blockAt(context.workbook.getActiveCell(), block);
      range.load("address");
      put(range, block, chart);
      await context.sync();
      return range.address;
    });
  return writing("the table", task);
}

/** Puts a block on a new sheet and shows it. */
export async function addSheet(name: string, block: Block, chart?: LineChart): Promise<string> {
  const task = () =>
    Excel.run(oneUndoStep(), async (context) => {
      const { worksheets } = context.workbook;
      worksheets.load("items/name");
      await context.sync();
      const free = freeSheetName(
        name,
        worksheets.items.map((sheet) => sheet.name),
      );
      const sheet = worksheets.add(free);
      put(blockAt(sheet.getRange("A1"), block), block, chart);
      sheet.activate();
      await context.sync();
      return free;
    });
  return writing("the sheet", task);
}
