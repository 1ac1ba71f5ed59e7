import { content, type Part, unstated } from "./part";
import { seriesParts } from "./series";
import { splitSymbols, type Written } from "./symbols";

/** Named parts of a name, as the form of its system cuts it. */
export type Cut = Readonly<Record<string, string | undefined>>;

/** Reads the alloy out of a cut name; undefined where it does not follow the rule after all. */
type Reader = (cut: Cut, system: string) => readonly Part[] | undefined;

function figures(cut: Cut): number[] {
  return (cut.p ?? "").split("-").map(Number);
}

/** The symbol as people print it: Cr for CR, letters of JIS and GOST as they stand. */
function printed({ symbol, element }: Written): string {
  return symbol === element.toUpperCase() ? element : symbol;
}

function exact(written: Written, figure: number, divisor: number, rule: string): Part {
  return {
    element: written.element,
    content: content(figure / divisor),
    says: `${printed(written)} ${figure}: ${rule}`,
  };
}

/** Symbols in order with the figures of the name in order; the last symbols may have none. */
function inOrder(cut: Cut, divisor: (written: Written) => number, rule: (by: number) => string) {
  const written = splitSymbols(cut.s ?? "", "Latin");
  const given = figures(cut);
  if (written === undefined || given.length > written.length) return undefined;
  return written.map((each, at): Part => {
    const figure = given[at];
    if (figure === undefined) return unstated(each.element, `symbol ${printed(each)}`);
    return exact(each, figure, divisor(each), rule(divisor(each)));
  });
}

/** Each symbol with the figure behind it, in whole percents. */
function withFigures(text: string, system: string, divisor = 1): readonly Part[] | undefined {
  const trimmed = text.replace(/[AEА](?:-Ш)?$/, (end) => (text === end ? end : ""));
  const written = splitSymbols(trimmed, system === "GOST" ? "GOST" : "Latin");
  return written?.map((each): Part => {
    if (each.figure === null) return unstated(each.element, `symbol ${printed(each)}, under about 1.5 %`);
    return exact(each, each.figure, divisor, divisor === 1 ? "whole percents" : "tenths of a percent");
  });
}

function highSpeed(cut: Cut): readonly Part[] {
  const elements = ["W", "Mo", "V", "Co"];
  return figures(cut).map((figure, at) => ({
    element: elements[at] ?? "",
    content: figure,
    says: `figure ${at + 1} after HS: whole percents`,
  }));
}

function letters(cut: Cut): readonly Part[] | undefined {
  return splitSymbols(cut.s ?? "", "JIS")?.map(({ element, symbol }) =>
    unstated(element, `letter ${symbol}`),
  );
}

function leading(cut: Cut, element: string, divisor: number): readonly Part[] | undefined {
  const rest = withFigures(cut.s ?? "", "GOST");
  const figure = Number(cut.p);
  const rule = divisor === 1 ? "whole percents" : "tenths of a percent";
  return (
    rest && [{ element, content: content(figure / divisor), says: `figure ${figure}: ${rule}` }, ...rest]
  );
}

const READERS: Readonly<Record<string, Reader>> = {
  "": () => [],
  series: ({ n = "", m, l }) => seriesParts(n, [m, l]),
  "series x": ({ n = "" }) => seriesParts(`${n}x`, []),
  "factors in order": (cut) =>
    inOrder(
      cut,
      ({ factor }) => factor,
      (by) => `content times ${by}`,
    ),
  "whole percents in order": (cut) =>
    inOrder(
      cut,
      () => 1,
      () => "whole percents",
    ),
  "tungsten molybdenum vanadium cobalt": highSpeed,
  letters,
  symbols: ({ s = "" }, system) => withFigures(s, system),
  bearing: ({ s = "" }, system) => withFigures(s, system, 10),
  "chromium in tenths": (cut) => leading(cut, "Cr", 10),
  "tungsten first": (cut) => leading(cut, "W", 1),
};

/** The alloy that a cut name states by the given way of writing it. */
export function readContents(way: string, cut: Cut, system: string): readonly Part[] | undefined {
  const reader = READERS[way];
  if (reader === undefined) throw new Error(`no reader of ${way}`);
  return reader(cut, system);
}
