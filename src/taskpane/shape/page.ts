import { numberText } from "../../core/quantity-text";
import { attempt, Refusal } from "../../core/refusal";
import { functionNamed } from "../../functions/catalogue";
import type { ExampleArgument } from "../../functions/declare";
import type { Place } from "../charts/scale-drawing";
import type { PageContext, RenderPage } from "../page";
import { ask, firstRow } from "../parts/ask";
import { afterPause, element, fill } from "../parts/dom";
import { evidenceOf } from "../parts/evidence";
import { formulaOf, withoutEmptyEnd } from "../parts/formula";
import { insertControl } from "../parts/insert";
import { figureReading } from "../parts/reading";
import { caution, disclosure, facts, note, refusalNote, table } from "../parts/tables";
import { bladeProfile, heelSection } from "./blade-drawing";
import { type BladeForm, type BladeInput, bladeForm } from "./blade-form";

const RIGID =
  "Centre of percussion: of a rigid body; a blow there does not jolt the hand. It is not the node of vibration near the point, which depends on how the blade flexes and is not worked out here.";
const BARE =
  "The bare blade by its stations: a tang, guard, grip and pommel move the balance toward the hand. ASSEMBLY adds them.";

/** Shape: mass, balance and percussion of a blade by its stations, its profile and its section to scale. */
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
  const sources = evidenceOf({ functionName: "STATIONS" }, "Where these figures come from");
  root.append(form.block, answer, pictures, inserts, sources);
  refresh();
  return undefined;
};

interface Shown {
  readonly facts: readonly HTMLElement[];
  readonly drawn: readonly HTMLElement[];
  readonly formulas: readonly (readonly [what: string, formula: string])[];
}

function shown(form: BladeForm): Shown {
  const found = attempt(() => shownOf(form.read()));
  return found instanceof Refusal ? { facts: [refusalNote(found.message)], drawn: [], formulas: [] } : found;
}

const orNothing = (figure: number) => (figure === 0 ? null : figure);

const listOrNothing = (list: readonly number[]) => (list.every((figure) => figure === 0) ? null : list);

/** The arguments of STATIONS; what is not given stays out of the formula. */
function stationArguments(blade: BladeInput): readonly ExampleArgument[] {
  const { x, width, thickness, grind, edge, steel, bevelHeight, curve, fullerWidth, fullerDepth } = blade;
  const given: ExampleArgument[] = [
    ...[x, width, thickness, grind.word],
    orNothing(edge),
    steel === "" ? null : steel,
    ...[bevelHeight, curve].map(orNothing),
    ...[fullerWidth, fullerDepth].map(listOrNothing),
  ];
  return withoutEmptyEnd(given, (argument) => argument === null);
}

/** Lists go into a call as columns. */
const asCells = (argument: ExampleArgument) =>
  Array.isArray(argument) ? argument.map((cell) => [cell]) : argument;

function formula(name: string, given: readonly ExampleArgument[]): string {
  const fn = functionNamed(name);
  return fn === undefined ? "" : formulaOf(fn, given);
}

interface Body {
  readonly mass: number;
  readonly balance: number;
  readonly inertia: number;
}

/** Ten digits: what is written into the sheet gives the same figure there. */
const digits = (value: number) => Number(value.toPrecision(10));

function shownOf(blade: BladeInput): Shown {
  const given = stationArguments(blade);
  const reply = ask("STATIONS", ...given.map(asCells));
  if (reply.refusal !== null) return { facts: [refusalNote(reply.refusal)], drawn: [], formulas: [] };
  const [volume = 0, mass = 0, balance = 0, inertia = 0] = firstRow(reply).map(Number);
  const body = { mass, balance, inertia };
  const percussion = percussionOf(blade, body);
  return {
    facts: [
      element(
        "p",
        { class: "answer" },
        `${mass.toFixed(0)} g, balance at ${figureReading(balance.toFixed(0), "mm")}`,
      ),
      factsOf(body, volume, percussion.text),
      ...(percussion.refusal === null ? [] : [refusalNote(percussion.refusal)]),
      note(BARE),
      caution([RIGID]),
    ],
    drawn: drawingsOf(blade, body, percussion.at),
    formulas: [
      ["Volume, mass, balance and inertia in four cells", formula("STATIONS", given)],
      ...percussion.formulas,
    ],
  };
}

function factsOf({ inertia }: Body, volume: number, percussion: string): HTMLElement {
  return facts([
    ["Volume", `${(volume / 1000).toFixed(1)} cm³`],
    ["Inertia about the balance", `${inertia.toPrecision(4)} kg m²`],
    ["Centre of percussion", percussion],
  ]);
}

interface Percussion {
  readonly text: string;
  readonly at: number | undefined;
  readonly refusal: string | null;
  readonly formulas: Shown["formulas"];
}

function percussionOf({ held }: BladeInput, { mass, balance, inertia }: Body): Percussion {
  if (held === "") return { text: "", at: undefined, refusal: null, formulas: [] };
  const reply = ask("PERCUSSION_CENTRE", mass, balance, inertia, held);
  if (reply.refusal !== null) return { text: "", at: undefined, refusal: reply.refusal, formulas: [] };
  const at = Number(firstRow(reply)[0]);
  const handed = /^-?[\d.]+$/.test(held) ? Number(held) : held;
  const given = [digits(mass), digits(balance), digits(inertia), handed];
  return {
    text: `${figureReading(at.toFixed(0), "mm")}, held at ${Number.isFinite(Number(held)) ? `${held} mm` : held}`,
    at,
    refusal: null,
    formulas: [["Centre of percussion", formula("PERCUSSION_CENTRE", given)]],
  };
}

/** A centre of percussion past the tip is said above, but has no place on the blade. */
function drawingsOf(blade: BladeInput, { balance }: Body, percussion: number | undefined): HTMLElement[] {
  const tip = blade.x.at(-1) ?? 0;
  const places: Place[] = [{ at: balance, name: `balance ${balance.toFixed(0)} mm` }];
  if (percussion !== undefined && percussion <= tip && percussion >= (blade.x[0] ?? 0)) {
    places.push({ at: percussion, name: `percussion ${percussion.toFixed(0)} mm`, isLimit: true });
  }
  return [
    element("h3", {}, "To scale"),
    bladeProfile(blade, places),
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

function insertsOf(formulas: Shown["formulas"], { port }: PageContext): HTMLElement[] {
  return formulas.flatMap(([what, text]) => [note(what), insertControl(port, () => text).block]);
}
