import { element } from "./dom";
import { choiceField, type Field, fieldRow } from "./fields";
import { prefer, preferences } from "./preferences";

const NOTE =
  "For reading in this pane only: sheets and formulas keep °C and mm, and so does a bare figure that you type.";

/** Units that the pane is read in, below every page. */
export function unitChoice(changed: () => void): HTMLElement {
  const { temperature, length } = preferences();
  const scale = choice("Temperatures in", ["°C first", "°F first"], temperature === "°F" ? 1 : 0);
  const unit = choice("Lengths in", ["mm", "inch"], length === "in" ? 1 : 0);
  scale.control.addEventListener("change", () => {
    prefer({ temperature: scale.control.selectedIndex === 1 ? "°F" : "°C" });
    changed();
  });
  unit.control.addEventListener("change", () => {
    prefer({ length: unit.control.selectedIndex === 1 ? "in" : "mm" });
    changed();
  });
  return element(
    "section",
    { class: "foot", "aria-label": "Units for reading" },
    fieldRow(scale, unit),
    element("p", { class: "hint" }, NOTE),
  );
}

function choice(label: string, choices: readonly string[], chosen: number): Field<HTMLSelectElement> {
  const made = choiceField({ label }, choices);
  made.control.selectedIndex = chosen;
  return made;
}
