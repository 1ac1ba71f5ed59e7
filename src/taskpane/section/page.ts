import { attemptOr } from "../../core/refusal";
import type { RenderPage } from "../page";
import { ask, cellText, firstRow } from "../parts/ask";
import { afterPause, element, fill } from "../parts/dom";
import { evidenceOf } from "../parts/evidence";
import { button, textField } from "../parts/fields";
import { insertControl } from "../parts/insert";
import { figureReading } from "../parts/reading";
import { caution, disclosure, facts, note, refusalNote, table } from "../parts/tables";
import { typed } from "../parts/words";
import { hardnessAcross, type QuenchedSection, quenchedSection, sectionToScale } from "./section-figures";
import { type SectionForm, sectionForm } from "./section-form";

const CALIBRATE =
  "No value for clay is published: clay, coat and bath differ from shop to shop. Quench and etch one blade of the batch, type how deep it hardened, and work with the clay that fits it (SECTION_FIT).";

/** Section: whether a blade hardens in a bath, how hard across, bare or under clay. */
export const render: RenderPage = (root, context) => {
  const form = sectionForm(context.state.steel);
  const trial = textField({
    label: "Trial blade hard to, mm",
    hint: "etched, from the edge; empty where none was quenched yet",
  });
  const answer = element("section", { "aria-label": "After the quench", "aria-live": "polite" });
  const fitted = element("div", { "aria-live": "polite" });
  const insert = insertControl(context.port, () => form.formula("SECTION_QUENCH"));
  const profileInsert = insertControl(context.port, () => form.formula("SECTION_PROFILE"));
  const pictures = element("section", { "aria-label": "Hardness across the section" });
  const sources = element("div", {});
  const refresh = () => {
    const [steel = ""] = form.given();
    context.state.steel = steel;
    fill(answer, ...answerOf(form));
    fill(pictures, ...picturesOf(form, profileInsert.block));
    fill(fitted, ...fitOf(form, trial.control.value.trim(), refresh));
    fill(sources, evidenceOf({ functionName: "SECTION_QUENCH", steel }, "Where these figures come from"));
    insert.refresh();
    profileInsert.refresh();
  };
  for (const control of [...form.controls, trial.control]) {
    control.addEventListener("input", afterPause(refresh, 250));
  }
  const calibration = element(
    "section",
    { "aria-label": "Calibrate on one blade" },
    element("h3", {}, "Calibrate on one blade"),
    caution([CALIBRATE]),
    trial.block,
    fitted,
  );
  root.append(form.block, answer, insert.block, pictures, calibration, sources);
  refresh();
  return undefined;
};

/** A figure of hardness with its unit; bands arrive as text. */
const hrc = (text: string) => (text === "" ? "" : `${text} HRC`);

function answerOf(form: SectionForm): HTMLElement[] {
  const reply = ask("SECTION_QUENCH", ...form.given());
  if (reply.refusal !== null) return [refusalNote(reply.refusal)];
  const [depth = "", edge = "", middle = "", spine = "", said = ""] = firstRow(reply);
  const [verdict = "", ...cautions] = said.split("; ");
  return [
    element("p", { class: "verdict" }, verdict),
    facts([
      ["Hardened depth, likely", figureReading(Number(depth).toFixed(1), "mm")],
      ["Edge", hrc(edge)],
      ["Middle", hrc(middle)],
      ["Spine", hrc(spine)],
    ]),
    note("As quenched, before any temper; a range covers nine blades in ten."),
    ...(cautions.length > 0 ? [caution(cautions)] : []),
  ];
}

function quenchedOrNothing(form: SectionForm): QuenchedSection | undefined {
  return attemptOr(undefined, () => quenchedSection(form.given()));
}

function picturesOf(form: SectionForm, insert: HTMLElement): HTMLElement[] {
  const section = quenchedOrNothing(form);
  if (section === undefined) return [];
  return [
    element("h3", {}, "Hardness across the section"),
    hardnessAcross(section),
    sectionToScale(section),
    disclosure("The same figures in a table", () => [profileTable(form, section), insert]),
  ];
}

const tenth = (text: string) => (Number.isFinite(Number(text)) ? Number(text).toFixed(1) : text);

function profileTable(form: SectionForm, { points }: QuenchedSection): HTMLElement {
  const rows = ask("SECTION_PROFILE", ...form.given()).rows.map((row, at) => {
    const figures = row.map(cellText).map(tenth);
    return [...figures, (points[at]?.hvLikely ?? 0).toFixed(0)];
  });
  const headings = ["mm", "low", "likely", "high", "HV"].map((text) => ({ text, isFigure: true }));
  return table("From the edge in mm; low, likely and high in HRC; HV: likely in Vickers", headings, rows);
}

const asClay = (resistance: string) => Number(resistance).toPrecision(3);

function fitOf(form: SectionForm, measured: string, changed: () => void): HTMLElement[] {
  if (measured === "") return [];
  const reply = ask("SECTION_FIT", ...fitArguments(form, measured));
  if (reply.refusal !== null) return [refusalNote(reply.refusal)];
  const [clay = "", factor = "", misfit = ""] = firstRow(reply);
  const hasClay = Number(clay) > 0;
  const use = () => {
    if (hasClay) form.setClay(asClay(clay));
    else form.setBathFactor(Number(factor).toPrecision(3));
    changed();
  };
  return [
    facts([
      ["Clay that fits", hasClay ? `${asClay(clay)} m²K/W` : ""],
      ["Bath factor that fits", hasClay ? "" : Number(factor).toPrecision(3)],
      ["Misfit", figureReading(Math.abs(Number(misfit)).toFixed(1), "mm")],
    ]),
    button("Work with it above", use),
    element("code", { class: "formula" }, fitFormula(form, measured)),
  ];
}

/** The measured depth stands last, behind the start temperature that the form does not ask for. */
function fitArguments(form: SectionForm, measured: string): readonly string[] {
  return [...form.given(), "", measured];
}

function fitFormula(form: SectionForm, measured: string): string {
  return form.formula("SECTION_FIT", ["", typed(measured)]);
}
