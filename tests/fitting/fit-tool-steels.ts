import { hollomonJaffe } from "../../src/core/tempering/hollomon-jaffe";
import { leastSquares } from "./least-squares";
import file from "./tool-steel-rows.json";

/** Centre of the parameter, as in the curves of the plain steels. */
const CENTRE = 12;
const HOURS = 2;
/** From so many rows the bend may change along the curve. */
const ROWS_FOR_A_CUBIC = 12;

/** Polynomial in the Hollomon-Jaffe parameter through the rows of every curve: of the second order, of the third where there are many. */
export function fitToolSteels(): Map<string, readonly number[]> {
  const curves = new Set(file.rows.map(([curve]) => curve as string));
  return new Map(
    [...curves].map((curve) => {
      const rows = file.rows.filter(([name]) => name === curve);
      const equations = rows.map(([, , celsius, hrc]) => {
        const x = hollomonJaffe(celsius as number, HOURS) - CENTRE;
        const terms = rows.length < ROWS_FOR_A_CUBIC ? [1, x, x * x] : [1, x, x * x, x ** 3];
        return { terms, y: hrc as number, weight: 1 };
      });
      return [curve, leastSquares(equations)];
    }),
  );
}
