import type { TypedTemper } from "../../core/tempering/fahrenheit";
import { hasUnit } from "../measure";
import type { Parameter } from "../parameters";

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
