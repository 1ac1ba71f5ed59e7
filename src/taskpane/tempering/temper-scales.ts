import { celsiusOf, fahrenheit } from "../../core/quantity-text";
import type { XScale } from "../charts/frame";
import { preferences } from "../parts/preferences";

/** Tempers along an axis, each scale with round marks of its own. */
export const CELSIUS: XScale = { name: "°C", of: (celsius) => celsius, back: (celsius) => celsius };
export const FAHRENHEIT: XScale = { name: "°F", of: fahrenheit, back: celsiusOf };

/** Both scales, the reader's first. */
export const temperScales = (): readonly XScale[] =>
  preferences().temperature === "°F" ? [FAHRENHEIT, CELSIUS] : [CELSIUS, FAHRENHEIT];
