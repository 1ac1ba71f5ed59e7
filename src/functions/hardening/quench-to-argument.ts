import { QUENCH_END } from "../../core/hardening/retained";
import { ROOM_C } from "../../core/hardening/sub-zero";
import { optionalNumber } from "../parameters";

/** The end of the quench: one argument for every function that counts a sub-zero treatment. */
export const quenchToC = optionalNumber({
  label: "quench to C",
  quantity: "temperature",
  unit: "°C",
  min: QUENCH_END.coldest,
  max: QUENCH_END.hottest,
  fallback: ROOM_C,
  help: "Coldest temperature that the blade reaches straight from the quench in °C; waiting at room temperature makes austenite harder to turn.",
});
