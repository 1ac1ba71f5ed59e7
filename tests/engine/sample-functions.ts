import { NotAvailable } from "../../src/core/refusal";
import { rowFunction, scalarFunction, tableFunction } from "../../src/functions/declare";
import { number, optionalNumber, text } from "../../src/functions/parameters";

const length = (label: string) => ({ label, quantity: "length", unit: "mm", help: `The ${label}.` }) as const;

const described = {
  topic: "About",
  summary: "For the tests of the engine.",
  relations: [],
} as const;

/** a × b / 3, with a limit, so that both figures with many digits and refusals can be asked for. */
export const PRODUCT_THIRD = scalarFunction({
  ...described,
  name: "PRODUCT_THIRD",
  parameters: {
    a: number({ ...length("width"), min: 0, max: 1000 }),
    b: optionalNumber({ ...length("height"), min: 0, max: 1000, fallback: 1 }),
    c: optionalNumber({ ...length("depth"), min: 0, max: 1000, fallback: 2 }),
  },
  result: { label: "volume", unit: "mm³" },
  compute: ({ a, b, c }) => (a * b * c) / 3,
});

const wood = text({
  label: "wood",
  kind: "wood",
  help: "Name of a wood.",
  accepts: "oak or ash",
  find: (given) => {
    if (given === "oak" || given === "ash") return given;
    throw new NotAvailable(`wood: no wood is called "${given}"; nearest: oak, ash`);
  },
});

/** A row of a figure, a text and a figure. */
export const WOOD = rowFunction({
  ...described,
  name: "WOOD",
  parameters: { wood },
  result: [
    { label: "sevenths", unit: "mm" },
    { label: "name", unit: "text" },
    { label: "ninths", unit: "mm" },
  ],
  compute: ({ wood: name }) => [1 / 7, name, 1 / 9],
});

/** A table whose second row is asked for out of range by a caller that indexes it. */
export const SQUARES = tableFunction({
  ...described,
  name: "SQUARES",
  parameters: {
    count: number({ label: "count", quantity: "count", unit: "", whole: true, min: 1, help: "Rows." }),
  },
  result: [
    { label: "root", unit: "" },
    { label: "square", unit: "" },
  ],
  compute: ({ count }) => Array.from({ length: count }, (_, i) => [i / 3, (i / 3) ** 2]),
});

/** A function with a fault of its own. */
export const FAULTY = scalarFunction({
  ...described,
  name: "FAULTY",
  parameters: { a: number(length("width")) },
  result: { label: "nothing", unit: "" },
  compute: () => {
    throw new TypeError("no such table");
  },
});

export const SAMPLES = [PRODUCT_THIRD, WOOD, SQUARES, FAULTY];
