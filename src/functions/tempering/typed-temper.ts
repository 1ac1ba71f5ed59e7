import type { TypedTemper } from "../../core/tempering/fahrenheit";
import type { Cell } from "../cells";
import type { Parameter } from "../parameters";

/** A bare 400 may be meant as °F; "400 °C" and "400F" are not. */
function hasUnit(cell: Cell): boolean {
  return typeof cell === "string" && /\p{L}\.?\s*$/u.test(cell);
}

/** A temper read together with whether its unit was written beside it. */
export function typedTemper(parameter: Parameter<number>): Parameter<TypedTemper> {
  return {
    ...parameter,
    read: (cell) => ({ celsius: parameter.read(cell), hasUnit: hasUnit(cell) }),
    fallback: () => ({ celsius: parameter.fallback(), hasUnit: false }),
  };
}

/** The same for a temper that may be left out. */
export function typedTemperOrNothing(
  parameter: Parameter<number | undefined>,
): Parameter<TypedTemper | undefined> {
  return {
    ...parameter,
    read: (cell) => {
      const celsius = parameter.read(cell);
      return celsius === undefined ? undefined : { celsius, hasUnit: hasUnit(cell) };
    },
    fallback: () => undefined,
  };
}
