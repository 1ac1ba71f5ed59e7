/**
 * The topics, in the order of a run. One word each: it heads the lists of functions and, in lower case,
 * names the folder of the topic in `core`, `functions` and the tests.
 */
export const TOPICS = [
  "Steel",
  "Hardening",
  "Tempering",
  "Hardness",
  "Inspection",
  "Blade",
  "Shape",
  "Mechanics",
  "Stock",
  "Run",
  "Money",
  "About",
] as const;

export type Topic = (typeof TOPICS)[number];
