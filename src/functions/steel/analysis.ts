import { InvalidValue } from "../../core/refusal";
import { analysisText } from "../../core/steel/analysis";
import type { Element } from "../../core/steel/composition";
import { rowFunction } from "../declare";
import { rangeParameter } from "../parameters";
import { analysedContents, element } from "./element";

/** Pairs each element with its figure; a place where both are empty, or the figure is, was not analysed. */
function write(elements: readonly (Element | undefined)[], values: readonly (number | undefined)[]): string {
  if (elements.length !== values.length)
    throw new InvalidValue(
      `${elements.length} elements but ${values.length} values: give two ranges of equal length`,
    );
  const symbols: Element[] = [];
  const figures: number[] = [];
  values.forEach((value, at) => {
    const symbol = elements[at];
    if (value === undefined) return;
    if (symbol === undefined) throw new InvalidValue(`value ${at + 1}, ${value} %, has no element beside it`);
    symbols.push(symbol);
    figures.push(value);
  });
  return analysisText(symbols, figures);
}

export const ANALYSIS = rowFunction({
  name: "ANALYSIS",
  summary: "Turns the elements and figures of a certificate into a text that every steel argument accepts.",
  parameters: {
    elements: rangeParameter({
      ...element,
      label: "elements",
      help: "Range of element symbols: C, Si, Mn, Cr ...",
    }),
    values: analysedContents,
  },
  result: [{ label: "analysis", unit: "text" }],
  relations: [],
  compute: ({ elements, values }) => [write(elements, values)],
});
