import { ELEMENTS, type Element } from "../../core/steel/composition";
import { elementNamed } from "../../core/steel/plausible";
import { number, type Parameter, rangeParameter, text, textOrNothing } from "../parameters";

const options = {
  label: "element",
  kind: "element",
  help: `Symbol of the element: ${ELEMENTS.join(", ")}.`,
  accepts: `one of ${ELEMENTS.join(", ")}`,
  words: ELEMENTS,
  find: (given: string | number) => elementNamed(String(given)),
};

/** The symbol of an element. */
export const element: Parameter<Element> = text(options);

/** The symbol of an element, or nothing for all of them. */
export const elementOrNothing: Parameter<Element | undefined> = textOrNothing(options);

/** Figures of a certificate beside their elements. */
export const analysedContents = rangeParameter(
  number({
    label: "values",
    quantity: "mass %",
    unit: "%",
    min: 0,
    help: "Range of contents in mass %, in the order of the elements; an empty cell was not analysed.",
  }),
);
