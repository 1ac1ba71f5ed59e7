import { ask, firstRow } from "../parts/ask";
import { element } from "../parts/dom";
import { caution, facts, note, refusalNote } from "../parts/tables";
import { celsiusText } from "../parts/words";
import type { Recipe } from "./temper-recipe";

const START = "Start below it, read the hardness, and work up: a blade can be drawn further, never back.";

const hrc = (text: string) => (text === "" ? "" : `${text} HRC`);

/** The temper for a hardness as TEMPER_PLAN answers: where to begin, what kind of answer, which way to lean. */
export function temperGoal({ steel, target, hours, cycles }: Recipe): HTMLElement[] {
  const reply = ask("TEMPER_PLAN", steel, target, hours, cycles);
  if (reply.refusal !== null) return [refusalNote(reply.refusal)];
  const [start = "", likely = "", high = "", flag = "", cooler = "", hotter = "", cautions = ""] =
    firstRow(reply);
  return [
    element("p", { class: "answer" }, likely === "" ? flag : celsiusText(likely)),
    facts([
      ["Start at", celsiusText(start)],
      ["Hottest that may still do", celsiusText(high)],
      ["Kind of answer", likely === "" ? "" : flag],
      ["10 °C (18 °F) cooler", hrc(cooler)],
      ["10 °C (18 °F) hotter", hrc(hotter)],
    ]),
    ...(cautions === "" ? [] : [caution(cautions.split("; "))]),
    ...(likely === "" ? [] : [note(START)]),
  ];
}
