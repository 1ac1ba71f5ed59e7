import { numberText } from "../../core/quantity-text";
import { attempt, Refusal } from "../../core/refusal";
import type { Place } from "../charts/scale-drawing";
import type { PageContext, RenderPage } from "../page";
import { afterPause, element, fill } from "../parts/dom";
import { evidenceOf } from "../parts/evidence";
import { insertControl } from "../parts/insert";
import { figureReading } from "../parts/reading";
import { caution, disclosure, facts, note, refusalNote, table } from "../parts/tables";
import { type Bending, bendingOf } from "./bending";
import { bladeProfile, heelSection } from "./blade-drawing";
import { type BladeForm, type BladeInput, bladeForm } from "./blade-form";
import type { Offered } from "./calls";
import { type Ringing, ringingOf } from "./ringing";
import { type Body, type Percussion, percussionOf, type Weighed, weighed } from "./weight";

const RIGID =
  "Centre of percussion: of a rigid body; a blow there does not jolt the hand. The quiet point near the tip is another place: there the blade hardly moves when it rings.";
const BARE =
  "The bare blade by its stations: a tang, guard, grip and pommel move the balance toward the hand and the quiet points: give them above.";

/** Shape: mass, balance, percussion, bending and ringing of a blade by its stations, drawn to scale. */
export const render: RenderPage = (root, context) => {
  const form = bladeForm(context.state.steel);
  const answer = element("section", { "aria-label": "Mass and balance", "aria-live": "polite" });
  const pictures = element("section", { "aria-label": "Drawings" });
  const inserts = element("div", {});
  const refresh = () => {
    form.suit();
    const { facts: said, drawn, formulas } = shown(form);
    fill(answer, ...said);
    fill(pictures, ...drawn);
    fill(inserts, ...insertsOf(formulas, context));
  };
  for (const control of form.controls) control.addEventListener("input", afterPause(refresh, 250));
  const sources = [
    evidenceOf({ functionName: "STATIONS" }, "Where mass and balance come from"),
    evidenceOf({ functionName: "FLEX" }, "Where the bending comes from"),
    evidenceOf({ functionName: "RING" }, "Where the ringing comes from"),
  ];
  root.append(form.block, answer, pictures, inserts, ...sources);
  refresh();
  return undefined;
};

interface Shown {
  readonly facts: readonly HTMLElement[];
  readonly drawn: readonly HTMLElement[];
  readonly formulas: readonly Offered[];
}

function shown(form: BladeForm): Shown {
  const found = attempt(() => shownOf(form.read()));
  return found instanceof Refusal ? { facts: [refusalNote(found.message)], drawn: [], formulas: [] } : found;
}

function shownOf(blade: BladeInput): Shown {
  const weight = weighed(blade);
  const percussion = percussionOf(blade, weight.whole);
  const bending = bendingOf(blade);
  const ringing = ringingOf(blade);
  const parts = [percussion, bending, ringing];
  return {
    facts: [
      element("p", { class: "answer" }, answerOf(blade, weight)),
      facts([
        ["Volume", `${(weight.volume / 1000).toFixed(1)} cm³`],
        ["Inertia about the balance", `${weight.whole.inertia.toPrecision(4)} kg m²`],
        ["Centre of percussion", percussion.text],
        ...bending.facts,
        ...ringing.facts,
      ]),
      ...parts.flatMap(({ refusal }) => (refusal === null ? [] : [refusalNote(refusal)])),
      ...(blade.fittings.mass.length === 0 ? [note(BARE)] : []),
      caution([RIGID, bending.caution].filter((sentence) => sentence !== "")),
    ],
    drawn: drawingsOf(blade, placesOf(blade, weight.whole, percussion, ringing), bending),
    formulas: [...weight.formulas, ...parts.flatMap(({ formulas }) => formulas)],
  };
}

function answerOf({ fittings }: BladeInput, { blade, whole }: Weighed): string {
  const balance = `balance at ${figureReading(whole.balance.toFixed(0), "mm")}`;
  const mass = `${blade.mass.toFixed(0)} g`;
  return fittings.mass.length === 0
    ? `${mass}, ${balance}`
    : `${whole.mass.toFixed(0)} g (blade ${mass}), ${balance}`;
}

/** A place off the blade is said above, but is not drawn. */
function placesOf({ x }: BladeInput, body: Body, percussion: Percussion, ringing: Ringing): Place[] {
  const [heel, tip] = [x[0] ?? 0, x.at(-1) ?? 0];
  const marked = (name: string, at: number, isLimit = false) => ({
    at,
    name: `${name} ${at.toFixed(0)} mm`,
    isLimit,
  });
  return [
    marked("balance", body.balance),
    ...(percussion.at === undefined ? [] : [marked("percussion", percussion.at, true)]),
    ...ringing.quiet.map((at) => marked("quiet", at, true)),
  ].filter(({ at }) => at >= heel && at <= tip);
}

function drawingsOf(blade: BladeInput, places: readonly Place[], { drawn }: Bending): HTMLElement[] {
  return [
    element("h3", {}, "To scale"),
    bladeProfile(blade, places),
    ...(drawn === undefined ? [] : [drawn]),
    heelSection(blade),
    disclosure("The stations in a table", () => [stationTable(blade)]),
  ];
}

function stationTable({ x, width, thickness, fullerWidth, fullerDepth }: BladeInput): HTMLElement {
  const columns = [x, width, thickness, fullerWidth, fullerDepth];
  const rows = x.map((_, i) => columns.map((column) => numberText(column[i] ?? 0)));
  const headings = ["place", "width", "thick", "fuller width", "deep"].map((text) => ({
    text,
    isFigure: true,
  }));
  return table("Stations as read, mm", headings, rows);
}

function insertsOf(formulas: readonly Offered[], { port }: PageContext): HTMLElement[] {
  return formulas.flatMap(([what, text]) => [note(what), insertControl(port, () => text).block]);
}
