import { bandRelation, findUse } from "../../core/blade/bands";
import { chanceText } from "../../core/blade/chance";
import { textLiteral } from "../../formula/tokens";
import type { PageContext, RenderPage } from "../page";
import { ask, firstRow, list } from "../parts/ask";
import { afterPause, element, fill } from "../parts/dom";
import { evidenceOf } from "../parts/evidence";
import { choiceField, fieldRow, textField } from "../parts/fields";
import { insertControl } from "../parts/insert";
import { caution, disclosure, facts, refusalNote, table } from "../parts/tables";
import { spanText, typed } from "../parts/words";

/** Hardness bands by use, with edge figures, and a check of one hardness against them. */
export const render: RenderPage = (root, context) => {
  const uses = list(ask("USES"));
  if (uses.length === 0) {
    root.append(refusalNote(ask("USES").refusal ?? "no list of uses"));
    return undefined;
  }
  const use = choiceField({ label: "Use", line: "use" }, uses);
  const band = element("section", { "aria-label": "Band", "aria-live": "polite" });
  const check = hardnessCheck(context, () => use.control.value);
  const show = () => {
    fill(band, ...bandOf(use.control.value));
    check.refresh();
  };
  use.control.addEventListener("change", show);
  root.append(use.block, band, check.block, everyUse(uses));
  show();
  return undefined;
};

function bandOf(use: string): HTMLElement[] {
  const reply = ask("BAND", use);
  if (reply.refusal !== null) return [refusalNote(reply.refusal)];
  const [
    low = "",
    aim = "",
    high = "",
    part = "",
    angleLow = "",
    angleHigh = "",
    mmLow = "",
    mmHigh = "",
    basis = "",
    lean = "",
  ] = firstRow(reply);
  return [
    facts([
      ["Hardness", spanText(low, high, "HRC")],
      ["Aim", aim === "" ? "" : `${aim} HRC`],
      ["Part of the blade", part],
      ["Edge angle a side", spanText(angleLow, angleHigh, "°")],
      ["Thickness behind the edge", spanText(mmLow, mmHigh, "mm")],
      ["In doubt", lean],
      ["Basis", basis],
    ]),
    evidenceOf(
      { functionName: "BAND", relation: bandRelation(findUse(use)).title },
      "Where this band comes from and where sources disagree",
    ),
  ];
}

function hardnessCheck(context: PageContext, use: () => string) {
  const steel = textField({ label: "Steel", line: "steel" }, context.state.steel);
  const hardness = textField({ label: "Hardness, HRC", hint: "One reading, or low and high: 57-59" }, "58");
  const verdict = element("div", { "aria-live": "polite" });
  const formula = () => assessFormula(use(), steel.control.value, hardness.control.value);
  const insert = insertControl(context.port, formula);
  const refresh = () => {
    context.state.steel = steel.control.value;
    fill(verdict, ...verdictOf(use(), steel.control.value, hardness.control.value));
    insert.refresh();
  };
  for (const { control } of [steel, hardness]) control.addEventListener("input", afterPause(refresh));
  const block = element(
    "section",
    { "aria-label": "Check a hardness" },
    element("h3", {}, "Check a hardness against this use"),
    fieldRow(steel, hardness),
    verdict,
    insert.block,
  );
  return { block, refresh };
}

/** "57-59" and "57 to 59" as two figures; one figure stays one. */
function readings(text: string): string[] {
  const pair = /^\s*(\d+(?:[.,]\d+)?)\s*(?:-|–|to)\s*(\d+(?:[.,]\d+)?)\s*$/.exec(text);
  return pair === null ? [text.trim()] : [pair[1] ?? "", pair[2] ?? ""];
}

function assessFormula(use: string, steel: string, hardness: string): string {
  const given = readings(hardness).map(typed);
  return `=BLADE.ASSESS(${[textLiteral(use), textLiteral(steel), ...given].join(",")})`;
}

function verdictOf(use: string, steel: string, hardness: string): HTMLElement[] {
  const [low = "", high = null] = readings(hardness);
  const reply = ask("ASSESS", use, steel, low, high);
  if (reply.refusal !== null) return [refusalNote(reply.refusal)];
  const [status = "", chance = "", next = "", cautions = ""] = firstRow(reply);
  return [
    element("p", { class: "verdict" }, status),
    facts([
      ["Chance of a reading in the band", chance === "" ? "" : chanceText(Number(chance))],
      ["Next step", next],
    ]),
    ...(cautions === "" ? [] : [caution(cautions)]),
  ];
}

function everyUse(uses: readonly string[]): HTMLElement {
  const row = (use: string) => {
    const [low = "", aim = "", high = ""] = firstRow(ask("BAND", use));
    return [use, spanText(low, high, ""), aim];
  };
  const headings = [{ text: "use" }, { text: "HRC", isFigure: true }, { text: "aim", isFigure: true }];
  return disclosure("All uses in one table", () => [table("Hardness bands by use", headings, uses.map(row))]);
}
