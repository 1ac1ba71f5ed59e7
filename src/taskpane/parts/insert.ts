import { sentenceOf } from "../../core/refusal";
import { localForm } from "../../formula/local-form";
import { ENGLISH, type HostPort, type Separators } from "../../host/port";
import { element, fill } from "./dom";
import { button } from "./fields";

/** Asked once for each program around the pane. */
const asked = new WeakMap<HostPort, Promise<Separators>>();

/** How formulas are written around the pane; in English where that cannot be told. */
export function separatorsOf(port: HostPort): Promise<Separators> {
  const known = asked.get(port) ?? port.separators().catch(() => ENGLISH);
  asked.set(port, known);
  return known;
}

/**
 * A formula with a button that writes it into the selected cell. A cell that holds something is
 * only overwritten after a second press, since the host's undo may not reach what a pane wrote.
 *
 * @param formula - Asked for at the moment of pressing; with its equals sign.
 */
export function insertControl(
  port: HostPort,
  formula: () => string,
  label = "Put into the selected cell",
): { block: HTMLElement; refresh: () => void } {
  const shown = element("code", { class: "formula" });
  const status = element("div", { class: "insert-status", role: "status" });
  let written = ENGLISH;
  const show = () => {
    shown.textContent = localForm(formula(), written);
  };
  const refresh = () => {
    show();
    fill(status);
  };
  void separatorsOf(port).then((found) => {
    written = found;
    show();
  });
  refresh();
  const press = button(label, () => void insert(port, formula(), status));
  return { block: element("div", { class: "insert" }, shown, port.hasSheet ? press : null, status), refresh };
}

async function insert(port: HostPort, formula: string, status: HTMLElement): Promise<void> {
  try {
    const selected = await port.selection();
    if (selected === null) fill(status, "Select a cell first.");
    else if (selected.formula === "") await write(port, formula, status);
    else askFirst(port, formula, status, selected);
  } catch (problem) {
    fill(status, sentenceOf(problem));
  }
}

async function write(port: HostPort, formula: string, status: HTMLElement): Promise<void> {
  try {
    fill(status, `Written into ${await port.insertFormula(formula)}.`);
  } catch (problem) {
    fill(status, sentenceOf(problem));
  }
}

function askFirst(
  port: HostPort,
  formula: string,
  status: HTMLElement,
  selected: { readonly address: string; readonly shown: string },
): void {
  const replace = button("Replace it", () => void write(port, formula, status));
  const keep = button("Keep it", () => fill(status));
  fill(status, element("p", {}, `${selected.address} holds ${selected.shown}`), replace, " ", keep);
}
