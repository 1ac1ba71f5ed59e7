import type { RenderPage } from "../page";
import { ask, cellText, firstRow, list } from "../parts/ask";
import { afterPause, element, fill } from "../parts/dom";
import { evidenceOf } from "../parts/evidence";
import { fieldRow, textField } from "../parts/fields";
import { insertControl } from "../parts/insert";
import { tableInsert } from "../parts/table-insert";
import { caution, disclosure, facts, refusalNote, table } from "../parts/tables";
import { celsiusText, spanText, typed } from "../parts/words";
import { curveSection } from "./curve-section";
import { ovenForm } from "./oven-form";
import { temperGoal } from "./temper-goal";
import { type Recipe, recipeCall, temperOf } from "./temper-recipe";
import { temperTable } from "./temper-table";

/** Hardening and tempering: a range for one temper, the curve, the temper for a target, the oven, tables. */
export const render: RenderPage = (root, context) => {
  const { fields, recipe } = recipeFields(context.state.steel);
  const { steel, temper, hours, cycles, target } = fields;
  const range = element("div", { "aria-live": "polite" });
  const wanted = element("div", { "aria-live": "polite" });
  const curve = curveSection(context.port, recipe);
  const tables = element("div", {});
  const oven = ovenForm(
    context,
    () => recipe().temper,
    () => temperOf(recipe()),
  );
  const rangeInsert = insertControl(context.port, () =>
    recipeCall("TEMPERED_RANGE", recipe(), typed(recipe().temper)),
  );
  const targetInsert = insertControl(context.port, () =>
    recipeCall("TEMPER_PLAN", recipe(), typed(recipe().target)),
  );
  const refresh = () => {
    context.state.steel = recipe().steel;
    fill(range, ...rangeOf(recipe()));
    curve.refresh();
    fill(wanted, ...temperGoal(recipe()));
    fill(tables, ...tablesOf(recipe()));
    rangeInsert.refresh();
    targetInsert.refresh();
    oven.refresh();
  };
  for (const { control } of Object.values(fields)) {
    control.addEventListener("input", afterPause(refresh));
  }
  const form = element(
    "section",
    { "aria-label": "Hardness after a temper" },
    fieldRow(steel, temper),
    fieldRow(hours, cycles),
  );
  const goal = element(
    "section",
    { "aria-label": "Temper for a hardness" },
    element("h3", {}, "Temper for a hardness"),
  );
  form.append(range, rangeInsert.block);
  goal.append(target.block, wanted, targetInsert.block);
  const insert = tableInsert(context.port, recipe);
  root.append(form, curve.block, goal, oven.block, tables, ...(insert === null ? [] : [insert]));
  refresh();
  return undefined;
};

function recipeFields(startSteel: string) {
  const fields = {
    steel: textField({ label: "Steel", line: "steel" }, startSteel),
    temper: textField({ label: "Temper", hint: "°C; write 400 F for °F", line: "temper" }, "200"),
    hours: textField({ label: "Hours" }, "2"),
    cycles: textField({ label: "Number of tempers" }, "2"),
    target: textField({ label: "Wanted hardness, HRC", line: "target" }, "60"),
  };
  const read = (name: keyof typeof fields) => fields[name].control.value.trim();
  const recipe = (): Recipe => ({
    steel: read("steel"),
    temper: read("temper"),
    hours: read("hours"),
    cycles: read("cycles"),
    target: read("target"),
  });
  return { fields, recipe };
}

function rangeOf(recipe: Recipe): HTMLElement[] {
  const { steel, temper, hours, cycles } = recipe;
  const reply = ask("TEMPERED_RANGE", steel, temper, hours, cycles);
  if (reply.refusal !== null) return [refusalNote(reply.refusal)];
  const [low = "", likely = "", high = "", basis = "", warning = ""] = firstRow(reply);
  return [
    element("p", { class: "answer" }, `${spanText(low, high, "HRC")}, likely ${likely}`),
    facts([
      ["Temper", temperInBothScales(recipe)],
      ["Basis", basis],
    ]),
    ...(warning === "" ? [] : [caution(warning.split("; "))]),
  ];
}

/** What was typed, in both scales, so that 400 meant as °F is noticed. */
function temperInBothScales(recipe: Recipe): string {
  const celsius = temperOf(recipe);
  return celsius === undefined ? "" : celsiusText(String(celsius));
}

function tablesOf({ steel, hours, cycles }: Recipe): HTMLElement[] {
  return [
    element("h3", {}, "Hardness by temper"),
    temperTable(steel, { hours, cycles }),
    element("h3", {}, "Hardening"),
    hardening(steel),
    sections(steel),
    evidenceOf({ functionName: "TEMPERED_RANGE", steel }, "Where the hardness after temper comes from"),
    evidenceOf({ functionName: "QUENCHED_HRC", steel }, "Where the hardness as quenched comes from"),
    evidenceOf({ functionName: "MAX_SECTION", steel }, "Where the section figures come from"),
  ];
}

function hardening(steel: string): HTMLElement {
  const quenched = ask("QUENCHED_HRC", steel);
  if (quenched.refusal !== null) return refusalNote(quenched.refusal);
  const hardness = Math.round(Number(firstRow(quenched)[0]));
  return facts([
    ["As quenched, fully hardened", `about ${hardness} HRC: brittle, temper before use or straightening`],
  ]);
}

/** The thickest section each quench hardens; quenches without a figure are named below the table. */
function sections(steel: string): HTMLElement {
  const quenches = list(ask("QUENCHES"));
  const replies = quenches.map((quench) => ({ quench, reply: ask("MAX_SECTION", steel, quench) }));
  const answered = replies.filter(({ reply }) => reply.refusal === null);
  const refusals = [
    ...new Set(replies.map(({ reply }) => reply.refusal).filter((refusal) => refusal !== null)),
  ];
  const unanswered = refusals.map((refusal) => element("p", {}, refusal));
  if (answered.length === 0) return refusalNote(refusals[0] ?? "no quench is listed");
  const rows = answered.map(({ quench, reply }) => {
    const [hard = "", half = ""] = (reply.rows[0] ?? []).map(cellText);
    return [quench, hard, half];
  });
  const notes = [...new Set(answered.map(({ reply }) => firstRow(reply)[2] ?? ""))].filter(
    (note) => note !== "",
  );
  const headings = [
    { text: "quench" },
    { text: "fully hard, mm", isFigure: true },
    { text: "half martensite, mm", isFigure: true },
  ];
  return element(
    "div",
    {},
    table("Thickest section that hardens", headings, rows),
    ...notes.map((note) => element("p", { class: "basis" }, note)),
    ...(unanswered.length > 0 ? [disclosure("Quenches without a figure", () => unanswered)] : []),
  );
}
