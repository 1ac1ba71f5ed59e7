import { ask, cellText, firstRow, list } from "../ask";
import { afterPause, element, fill } from "../dom";
import { evidenceOf } from "../evidence";
import { fieldRow, textField } from "../fields";
import { insertControl } from "../insert";
import type { RenderPage } from "../page";
import { caution, disclosure, facts, refusalNote, table } from "../tables";
import { temperTable } from "../temper-table";
import { celsiusText, quoted, spanText, typed } from "../words";

/** What the form holds, as typed. */
interface Recipe {
  readonly steel: string;
  readonly temper: string;
  readonly hours: string;
  readonly cycles: string;
  readonly target: string;
}

/** Hardening and tempering: a range for one temper, the temper for a target, tables of both. */
export const render: RenderPage = (root, context) => {
  const steel = textField({ label: "Steel" }, context.state.steel);
  const temper = textField({ label: "Temper", hint: "°C; write 400 F for °F" }, "200");
  const hours = textField({ label: "Hours" }, "2");
  const cycles = textField({ label: "Number of tempers" }, "2");
  const target = textField({ label: "Wanted hardness, HRC" }, "60");
  const recipe = (): Recipe => ({
    steel: steel.control.value.trim(),
    temper: temper.control.value.trim(),
    hours: hours.control.value.trim(),
    cycles: cycles.control.value.trim(),
    target: target.control.value.trim(),
  });
  const range = element("div", { "aria-live": "polite" });
  const wanted = element("div", { "aria-live": "polite" });
  const tables = element("div", {});
  const rangeInsert = insertControl(context.port, () =>
    call("TEMPERED_RANGE", recipe(), typed(recipe().temper)),
  );
  const targetInsert = insertControl(context.port, () =>
    call("TEMPER_FOR", recipe(), typed(recipe().target)),
  );
  const refresh = () => {
    context.state.steel = recipe().steel;
    fill(range, ...rangeOf(recipe()));
    fill(wanted, ...temperFor(recipe()));
    fill(tables, ...tablesOf(recipe()));
    rangeInsert.refresh();
    targetInsert.refresh();
  };
  for (const { control } of [steel, temper, hours, cycles, target]) {
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
  root.append(form, goal, tables);
  refresh();
  return undefined;
};

function call(name: string, { steel, hours, cycles }: Recipe, second: string): string {
  return `=BLADE.${name}(${[quoted(steel), second, typed(hours), typed(cycles)].join(",")})`;
}

function rangeOf({ steel, temper, hours, cycles }: Recipe): HTMLElement[] {
  const reply = ask("TEMPERED_RANGE", steel, temper, hours, cycles);
  if (reply.refusal !== null) return [refusalNote(reply.refusal)];
  const [low = "", likely = "", high = "", basis = "", warning = ""] = firstRow(reply);
  return [
    element("p", { class: "answer" }, `${spanText(low, high, "HRC")}, likely ${likely}`),
    facts([
      ["Temper", temperInBothScales(temper)],
      ["Basis", basis],
    ]),
    ...(warning === "" ? [] : [caution(warning.split("; "))]),
  ];
}

/** What was typed, in both scales, so that 400 meant as °F is noticed. */
function temperInBothScales(temper: string): string {
  const isFahrenheit = /f/i.test(temper);
  const figure = Number.parseFloat(temper.replace(",", "."));
  const celsius = isFahrenheit ? (figure - 32) / 1.8 : figure;
  return Number.isFinite(celsius) ? celsiusText(String(celsius)) : "";
}

function temperFor({ steel, target, hours, cycles }: Recipe): HTMLElement[] {
  const reply = ask("TEMPER_FOR", steel, target, hours, cycles);
  if (reply.refusal !== null) return [refusalNote(reply.refusal)];
  return [
    element("p", { class: "answer" }, celsiusText(firstRow(reply)[0] ?? "")),
    element(
      "p",
      { class: "basis" },
      "Start below it, read the hardness, and work up: a blade can be drawn further, never back.",
    ),
  ];
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
