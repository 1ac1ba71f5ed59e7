import { fahrenheitDifference } from "../../core/quantity-text";
import type { PageContext } from "../page";
import { ask, firstRow } from "../parts/ask";
import { afterPause, element, fill } from "../parts/dom";
import { fieldRow, textField } from "../parts/fields";
import { insertControl } from "../parts/insert";
import { facts, note, refusalNote } from "../parts/tables";
import { celsiusText, typed } from "../parts/words";

const CHECK =
  "Put a thermometer beside the blade and type what it read: a dial that is 10 °C (18 °F) off moves the hardness as the lines for 10 °C above show.";

/** Figures of a list: "180 220", "356 F; 428 F". */
function listed(text: string): string[] {
  return text
    .split(/;|\s+(?=\d)/)
    .map((part) => part.trim())
    .filter((part) => part !== "");
}

const column = (texts: readonly string[]) => texts.map((text) => [text]);

/** How far the dial is off at the temper wanted. */
function errorText(settingC: number, wantedC: number | undefined): string {
  if (wantedC === undefined) return "";
  const off = Math.round(wantedC - settingC);
  if (off === 0) return "none here";
  return `${Math.abs(off)} °C (${Math.round(fahrenheitDifference(Math.abs(off)))} °F) ${off > 0 ? "hotter" : "cooler"} beside the blade than set`;
}

/** The setting of an oven for the temper typed above, from checks with a thermometer. */
export function ovenForm(context: PageContext, temper: () => string, celsius: () => number | undefined) {
  const settings = textField({ label: "Oven set to, °C", hint: "one check or several: 180 220" });
  const measured = textField({ label: "Thermometer read, °C", hint: "beside the blade, as many" });
  const answer = element("div", { "aria-live": "polite" });
  const lists = () => [settings, measured].map(({ control }) => listed(control.value));
  const formula = () => {
    const [set = [], read = []] = lists();
    const constant = (texts: readonly string[]) => `{${texts.map(typed).join(";")}}`;
    return set.length === 0 ? "" : `=BLADE.OVEN_SET(${typed(temper())},${constant(set)},${constant(read)})`;
  };
  const insert = insertControl(context.port, formula);
  const refresh = () => {
    const [set = [], read = []] = lists();
    fill(answer, ...ovenAnswer(set, read, temper(), celsius()));
    insert.block.hidden = set.length === 0 || read.length === 0;
    insert.refresh();
  };
  for (const { control } of [settings, measured]) control.addEventListener("input", afterPause(refresh));
  const block = element(
    "section",
    { "aria-label": "Oven" },
    element("h3", {}, "What to set the oven to"),
    fieldRow(settings, measured),
    answer,
    insert.block,
  );
  return { block, refresh };
}

function ovenAnswer(
  set: readonly string[],
  read: readonly string[],
  temper: string,
  wantedC: number | undefined,
): HTMLElement[] {
  if (set.length === 0 || read.length === 0) return [note(CHECK)];
  const reply = ask("OVEN_SET", temper, column(set), column(read));
  if (reply.refusal !== null) return [refusalNote(reply.refusal)];
  const [setting = ""] = firstRow(reply);
  return [
    element("p", { class: "answer" }, `set ${celsiusText(setting)}`),
    facts([
      ["For a temper of", wantedC === undefined ? "" : celsiusText(String(wantedC))],
      ["The oven runs", errorText(Number(setting), wantedC)],
    ]),
    note("As good as the thermometer and the checks; ovens swing about their setting."),
  ];
}
