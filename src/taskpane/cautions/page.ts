import cautions from "../../data/run/cautions.json";
import type { RenderPage } from "../page";
import { element, fill } from "../parts/dom";
import { choiceField } from "../parts/fields";
import { printButton } from "../parts/print";
import { caution, facts, note } from "../parts/tables";

const CLOSING =
  "Follow local codes and licensed practice. Legal checks are local: this list is no substitute for them.";

const EVERY_STEP = "Every step";

/** Cautions by step of a run: hazard, what smiths do about it, and what is usually cited. */
export const render: RenderPage = (root) => {
  const steps = cautions.rows.map(([step = ""]) => step);
  const choice = choiceField({ label: "Step of the run" }, [EVERY_STEP, ...steps]);
  const shown = element("div", { "aria-live": "polite" });
  const show = () => {
    const wanted = choice.control.value;
    const rows = cautions.rows.filter(([step]) => wanted === EVERY_STEP || step === wanted);
    fill(shown, ...rows.map(cautionBlock));
  };
  choice.control.addEventListener("change", show);
  root.append(
    choice.block,
    printButton("Print this caution sheet"),
    note(`${CLOSING} Limits are those of the United States unless another place is named.`),
    shown,
    caution(CLOSING),
  );
  show();
  return undefined;
};

function cautionBlock([
  step = "",
  hazard = "",
  practice = "",
  read = "",
  recalled = "",
]: readonly string[]): HTMLElement {
  return element(
    "section",
    { class: "whole" },
    element("h3", {}, step),
    facts(
      [
        ["Hazard", hazard],
        ["Common practice", practice],
        ["Usually cited", read],
        ["Cited from memory, not confirmed", recalled],
      ],
      true,
    ),
  );
}
