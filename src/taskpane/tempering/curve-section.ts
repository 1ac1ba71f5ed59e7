import { attempt, attemptOr, Refusal } from "../../core/refusal";
import { findSteel } from "../../core/steel/find";
import type { HostPort } from "../../host/port";
import type { Dot } from "../charts/band-chart";
import { ask, list } from "../parts/ask";
import { afterPause, element, fill } from "../parts/dom";
import { choiceField, fieldRow, textField } from "../parts/fields";
import { refusalNote } from "../parts/tables";
import { ownReadings, typedCoupons } from "./own-readings";
import { MOST_OTHERS, temperCurveFigure } from "./temper-curve-figure";
import type { Recipe } from "./temper-recipe";

const NO_USE = "none";

/** Steels as typed, between them a comma or "and"; the first two. */
function namesIn(text: string): string[] {
  const names = text.split(/[,;]|\band\b/).map((name) => name.trim());
  return names.filter((name) => name !== "").slice(0, MOST_OTHERS);
}

/** The tempering curve with what it is held against: the band of a use, other steels, own coupons. */
export function curveSection(port: HostPort, recipe: () => Recipe) {
  const use = choiceField({ label: "Band of the use", line: "use" }, [NO_USE, ...list(ask("USES"))]);
  const others = textField({ label: "Compared with", hint: "one or two: 52100, O1" });
  const coupons = textField({ label: "Own coupons", hint: "temper °C and HRC: 200 61; 230 59.5" });
  const drawn = element("div", {});
  let fromSheet: readonly Dot[] = [];
  let asked = 0;
  const draw = () => {
    const typed = attempt(() => typedCoupons(coupons.control.value));
    const own = typed instanceof Refusal ? [] : typed;
    const against = {
      use: use.control.value === NO_USE ? "" : use.control.value,
      others: namesIn(others.control.value),
      own: [...fromSheet, ...own],
    };
    fill(
      drawn,
      ...(typed instanceof Refusal ? [refusalNote(typed.message)] : []),
      ...temperCurveFigure(recipe(), against),
    );
  };
  const refresh = () => {
    const { steel } = recipe();
    fromSheet = [];
    draw();
    asked += 1;
    const own = asked;
    if (attemptOr(null, () => findSteel(steel)) === null) return;
    // The sheet answers later: what was asked since counts more.
    void ownReadings(port, steel).then((found) => {
      if (own !== asked || found.length === 0) return;
      fromSheet = found;
      draw();
    });
  };
  for (const { control } of [others, coupons]) control.addEventListener("input", afterPause(draw));
  use.control.addEventListener("change", draw);
  const block = element(
    "section",
    { "aria-label": "Tempering curve" },
    element("h3", {}, "Tempering curve"),
    drawn,
    fieldRow(use, others),
    coupons.block,
  );
  return { block, refresh };
}
