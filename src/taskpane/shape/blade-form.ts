import { findGrind, GRINDS, type Grind } from "../../core/shape/grinds";
import { parseMeasure } from "../../functions/measure";
import { element } from "../parts/dom";
import { choiceField, fieldRow, linesField, textField } from "../parts/fields";
import { type FittingLists, readFittings, readStations, type StationLists } from "./station-text";

/** A tapered two-edged blade, invented: 900 mm, 50 × 6 mm at the guard. */
const EXAMPLE = "0 50 6\n450 38 4.5\n850 22 3.5\n900 0 0";

/** Grinds that need no figure beyond those that stations carry. */
const CHOICES = GRINDS.filter(({ flat }) => flat === "").map(({ word }) => word);

/** A blade as typed. */
export interface BladeInput extends StationLists {
  readonly grind: Grind;
  readonly steel: string;
  readonly edge: number;
  readonly bevelHeight: number;
  readonly curve: number;
  readonly held: string;
  readonly fittings: FittingLists;
  /** How it is bent; as typed, empty where left out. */
  readonly hrc: string;
  readonly temper: string;
  readonly loadAt: string;
}

export interface BladeForm {
  readonly block: HTMLElement;
  readonly controls: readonly HTMLElement[];
  /** @throws Refusal with a sentence where something cannot be read. */
  readonly read: () => BladeInput;
  /** Shows the fields that the chosen grind takes. */
  readonly suit: () => void;
}

function fieldsOf(steel: string) {
  const grind = choiceField({ label: "Grind" }, CHOICES);
  grind.control.value = "diamond";
  return {
    stations: linesField(
      {
        label: "Stations, heel to tip",
        hint: "place, width and thickness in mm, one station a line; for a fuller on each side its width and depth behind them",
      },
      5,
      EXAMPLE,
    ),
    grind,
    steel: textField({ label: "Steel or density", hint: "g/cm³ for a density", line: "steel" }, steel),
    edge: textField({ label: "Edge, mm", hint: "thickness behind it" }, "0"),
    bevel: textField({ label: "Bevel height, mm", hint: "empty: the whole width" }),
    curve: textField({ label: "Wheel radius or bulge, mm" }),
    held: textField(
      { label: "Held at, mm", hint: "on the axis of the stations; below 0 is behind the heel" },
      "-40",
    ),
    fittings: linesField(
      {
        label: "Tang and fittings",
        hint: "mass in g and place of its balance in mm, one a line; for a long one its own inertia in kg m² behind them",
      },
      3,
    ),
    hrc: textField({ label: "Blade HRC", hint: "empty: no set" }, "52"),
    temper: textField({ label: "Temper, °C", hint: "where known" }),
    loadAt: textField({ label: "Loaded at, mm", hint: "empty: nine tenths" }),
  };
}

type Fields = ReturnType<typeof fieldsOf>;

const typed = ({ control }: { readonly control: HTMLInputElement }) => control.value.trim();

/** A length field; empty is 0, which the shape functions take for "not given". */
function lengthOf(text: string): number {
  return text.trim() === "" ? 0 : parseMeasure(text.trim(), "length", "mm");
}

/** Figures that the chosen grind has no use for are left out with their fields. */
function readFields(fields: Fields): BladeInput {
  const grind = findGrind(fields.grind.control.value);
  const length = (name: "edge" | "bevel" | "curve") => lengthOf(fields[name].control.value);
  return {
    ...readStations(fields.stations.control.value),
    grind,
    steel: typed(fields.steel),
    edge: grind.edge ? length("edge") : 0,
    bevelHeight: grind.bevel === "" ? 0 : length("bevel"),
    curve: grind.curve === "" ? 0 : length("curve"),
    held: typed(fields.held),
    fittings: readFittings(fields.fittings.control.value),
    hrc: typed(fields.hrc),
    temper: typed(fields.temper),
    loadAt: typed(fields.loadAt),
  };
}

function formBlock(fields: Fields): HTMLElement {
  const { stations, grind, steel, edge, bevel, curve, held, fittings, hrc, temper, loadAt } = fields;
  return element(
    "section",
    { "aria-label": "The blade" },
    stations.block,
    fieldRow(grind, steel),
    fieldRow(edge, bevel, curve),
    held.block,
    fittings.block,
    fieldRow(hrc, temper, loadAt),
  );
}

/** Fields of a blade by its stations. */
export function bladeForm(startSteel: string): BladeForm {
  const fields = fieldsOf(startSteel);
  const suit = () => {
    const grind = findGrind(fields.grind.control.value);
    fields.edge.block.hidden = !grind.edge;
    fields.bevel.block.hidden = grind.bevel === "";
    fields.curve.block.hidden = grind.curve === "";
  };
  return {
    block: formBlock(fields),
    controls: Object.values(fields).map(({ control }) => control),
    read: () => readFields(fields),
    suit,
  };
}
