import grinds from "../../data/shape/grinds.json";
import { type Worded, wordFinder } from "../word-list";

export type GrindWord =
  | "flat"
  | "part flat"
  | "chisel"
  | "hollow"
  | "convex"
  | "lenticular"
  | "diamond"
  | "hexagonal"
  | "rectangle"
  | "t-back";

/** A cross-section as a smith names it, and which figures describe it. */
export interface Grind extends Worded {
  readonly word: GrindWord;
  /** Takes a thickness behind the edge. */
  readonly edge: boolean;
  /** Whether it takes a bevel height: not at all, always, or the whole width where left out. */
  readonly bevel: "" | "needed" | "full";
  readonly curve: "" | "wheel radius" | "bulge";
  readonly flat: "" | "flat width" | "rib width";
  readonly meaning: string;
}

type Row = readonly [
  GrindWord,
  readonly string[],
  boolean,
  Grind["bevel"],
  Grind["curve"],
  Grind["flat"],
  string,
];

/** Every grind word that the worksheet functions accept. */
export const GRINDS: readonly Grind[] = (grinds.rows as unknown as readonly Row[]).map(
  ([word, aliases, edge, bevel, curve, flat, meaning]) => ({
    word,
    aliases,
    edge,
    bevel,
    curve,
    flat,
    meaning,
  }),
);

/**
 * Finds a grind by the word a smith uses for it.
 *
 * @throws NotAvailable naming the words that fit or the nearest ones.
 */
export const findGrind = wordFinder(GRINDS, { noun: "grind", listedBy: "GRINDS()" });
