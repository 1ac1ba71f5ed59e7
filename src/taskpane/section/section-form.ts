import { HEAT_TRANSFER_MEDIA } from "../../core/hardening/heat-transfer";
import { textLiteral } from "../../formula/tokens";
import { element } from "../parts/dom";
import { choiceField, type Field, fieldRow, textField } from "../parts/fields";
import { withoutEmptyEnd } from "../parts/formula";
import { disclosed } from "../parts/tables";
import { typed } from "../parts/words";

/** One blade on its way into the bath, as typed. */
export interface SectionForm {
  readonly block: HTMLElement;
  readonly controls: readonly (HTMLInputElement | HTMLSelectElement)[];
  /** The arguments of the section functions in their order; empty for one left out. */
  readonly given: () => readonly string[];
  /** The same as a formula holds them, those left out at the end dropped. */
  readonly formula: (name: string, more?: readonly string[]) => string;
  readonly setClay: (resistance: string) => void;
  readonly setBathFactor: (factor: string) => void;
}

const RESISTANCE = "m²K/W: thickness in m over conductivity in W/mK; empty for a bare blade";
/** Steel and bath are words; the rest are figures. */
const WORDS = [0, 4];

function sectionFields(steel: string) {
  const quench = choiceField({ label: "Quench", line: "quench" }, HEAT_TRANSFER_MEDIA);
  quench.control.value = "agitated water";
  return {
    steel: textField({ label: "Steel", line: "steel" }, steel),
    width: textField({ label: "Width, mm", hint: "edge to spine", line: "width" }, "30"),
    spine: textField({ label: "Spine, mm", hint: "thickness", line: "thickness" }, "7"),
    edge: textField({ label: "Edge, mm", hint: "thickness at the quench" }, "1.5"),
    quench,
    clay: textField({ label: "Clay", hint: RESISTANCE }, "0.001"),
    clayLine: textField({ label: "Clay from, mm", hint: "above the edge" }, "12"),
    below: textField({ label: "Thin coat below it", hint: "m²K/W" }, "0.0002"),
    transfer: textField({ label: "Through the air, s", hint: "fire to bath" }, "1"),
    bathFactor: textField({ label: "Bath factor", hint: "1 where not fitted" }, ""),
  };
}

type Fields = ReturnType<typeof sectionFields>;

function formBlock(fields: Fields): HTMLElement {
  const { steel, quench, width, spine, edge, clay, clayLine, below, transfer, bathFactor } = fields;
  return element(
    "section",
    { "aria-label": "The section and its quench" },
    fieldRow(steel, quench),
    element("div", { class: "field-row three" }, width.block, spine.block, edge.block),
    disclosed("Clay, transfer and bath factor", [
      clay.block,
      fieldRow(clayLine, below),
      fieldRow(transfer, bathFactor),
    ]),
  );
}

/** Fields of a section with the case of a differentially hardened blade to begin with. */
export function sectionForm(startSteel: string): SectionForm {
  const fields = sectionFields(startSteel);
  const inOrder: readonly Field<HTMLInputElement | HTMLSelectElement>[] = Object.values(fields);
  const given = () => inOrder.map(({ control }) => control.value.trim());
  return {
    block: formBlock(fields),
    controls: inOrder.map(({ control }) => control),
    given,
    formula(name, more = []) {
      const parts = given().map((text, at) => {
        if (WORDS.includes(at)) return textLiteral(text);
        return text === "" ? "" : typed(text);
      });
      return `=BLADE.${name}(${withoutEmptyEnd([...parts, ...more], (part) => part === "").join(",")})`;
    },
    setClay: (resistance) => {
      fields.clay.control.value = resistance;
    },
    setBathFactor: (factor) => {
      fields.bathFactor.control.value = factor;
    },
  };
}
