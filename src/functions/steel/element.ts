import { ELEMENTS, type Element } from "../../core/steel/composition";
import { elementNamed } from "../../core/steel/plausible";
import { type Parameter, text, textOrNothing } from "../parameters";

const options = {
  label: "element",
  kind: "element",
  help: `Symbol of the element: ${ELEMENTS.join(", ")}.`,
  accepts: `one of ${ELEMENTS.join(", ")}`,
  find: (given: string | number) => elementNamed(String(given)),
};

/** The symbol of an element. */
export const element: Parameter<Element> = text(options);

/** The symbol of an element, or nothing for all of them. */
export const elementOrNothing: Parameter<Element | undefined> = textOrNothing(options);
