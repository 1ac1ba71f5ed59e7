import type { ReadLine } from "../../core/run/line";
import type { Parameter } from "../parameters";
import { bladeHeadings } from "./blade-headings";
import { heatHeadings } from "./heat-headings";
import { costHeadings, stockHeadings } from "./money-headings";

/** Every heading that a run table may have, by the key of what it is read into, in the order they are listed. */
export const PLAN_HEADINGS = {
  ...bladeHeadings,
  ...heatHeadings,
  ...stockHeadings,
  ...costHeadings,
} as const satisfies { readonly [K in keyof ReadLine]: Parameter<ReadLine[K]> };

/** Other words for a heading. */
export const OTHER_WORDS = {
  "good wanted": "good",
  "aim hrc": "target",
  aim: "target",
  "behind edge": "edge",
} as const satisfies Readonly<Record<string, keyof ReadLine>>;
