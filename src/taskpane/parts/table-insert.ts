import { sentenceOf } from "../../core/refusal";
import type { HostPort } from "../../host/port";
import { element, fill } from "./dom";
import { button, choiceField } from "./fields";
import { type BlockOf, STEEL_BLOCKS, type SteelBlock } from "./steel-blocks";
import { disclosure } from "./tables";

type BlockName = keyof typeof STEEL_BLOCKS;

const isBlockName = (name: string): name is BlockName => Object.hasOwn(STEEL_BLOCKS, name);

/**
 * Puts a table about a steel into the sheet, at the selected cell or on a sheet of its own; cells that hold
 * something are only overwritten after a second press.
 *
 * @param of - Asked for at the moment of pressing.
 * @returns `null` where there is no sheet.
 */
export function tableInsert(port: HostPort, of: () => BlockOf): HTMLElement | null {
  if (!port.hasSheet) return null;
  return disclosure("Put a table into the sheet", () => [controls(port, of)]);
}

function controls(port: HostPort, of: () => BlockOf): HTMLElement {
  const hint = `The temper curve comes with ${port.hasCharts ? "a chart" : "a picture of it"}.`;
  const choice = choiceField({ label: "Table", hint }, Object.keys(STEEL_BLOCKS));
  const made = (): SteelBlock => {
    const name = choice.control.value;
    return STEEL_BLOCKS[isBlockName(name) ? name : "Temper curve"](of());
  };
  return element("div", { class: "insert" }, choice.block, ...placing(port, made));
}

/**
 * Puts one table into the sheet, at the selected cell or on a sheet of its own.
 *
 * @param made - Asked for at the moment of pressing.
 * @returns `null` where there is no sheet.
 */
export function blockInsert(port: HostPort, made: () => SteelBlock): HTMLElement | null {
  if (!port.hasSheet) return null;
  return disclosure("Put the list into the sheet", () => [
    element("div", { class: "insert" }, ...placing(port, made)),
  ]);
}

function placing(port: HostPort, made: () => SteelBlock): readonly (HTMLElement | string)[] {
  const status = element("div", { role: "status" });
  const doing = (task: () => Promise<void>) => () => void reporting(status, task);
  const here = button(
    "Put it at the selected cell",
    doing(() => atSelection(port, made(), status)),
  );
  const onSheet = button(
    "Put it on a new sheet",
    doing(() => onNewSheet(port, made(), status)),
  );
  return [here, " ", onSheet, status];
}

async function reporting(status: HTMLElement, task: () => Promise<void>): Promise<void> {
  try {
    await task();
  } catch (problem) {
    fill(status, element("p", { class: "refusal" }, sentenceOf(problem)));
  }
}

async function onNewSheet(port: HostPort, made: SteelBlock, status: HTMLElement): Promise<void> {
  const name = await port.addSheet(made.title, made.block, made.chart);
  fill(status, `Written on the sheet ${name}.`);
}

async function atSelection(port: HostPort, made: SteelBlock, status: HTMLElement): Promise<void> {
  const place = await port.placeFor(made.block);
  const write = async () => fill(status, `Written into ${await port.writeBlock(made.block, made.chart)}.`);
  if (place === null) fill(status, "Select a cell first.");
  else if (place.filled === 0) await write();
  else {
    const cells = place.filled === 1 ? "1 cell holds something" : `${place.filled} cells hold something`;
    const replace = button("Replace it", () => void reporting(status, write));
    const keep = button("Keep it", () => fill(status));
    fill(status, element("p", {}, `${place.address}: ${cells} already.`), replace, " ", keep);
  }
}
