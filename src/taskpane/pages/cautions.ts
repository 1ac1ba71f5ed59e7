import cautions from "../../data/run/cautions.json";
import { element } from "../dom";
import type { RenderPage } from "../page";
import { caution, facts } from "../tables";

const CLOSING =
  "Follow local codes and licensed practice. Legal checks are local: this list is no substitute for them.";

/** Cautions by step of a run: hazard, what smiths do about it, and what is usually cited. */
export const render: RenderPage = (root) => {
  root.append(
    element(
      "p",
      { class: "basis" },
      `${CLOSING} Limits are those of the United States unless another place is named.`,
    ),
    ...cautions.rows.map(cautionBlock),
    caution(CLOSING),
  );
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
    {},
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
