import { frozen } from "../table";
import { wordFinder } from "../word-list";

const scale = <const W extends string>(word: W, meaning: string, ...aliases: string[]) => ({
  word,
  aliases,
  meaning,
});

/** Every scale that is accepted, the blade trade's own first. */
export const SCALES = frozen([
  scale("HRC", "Rockwell C, diamond cone, 150 kgf", "Rockwell C", "Rc"),
  scale("HV", "Vickers", "Vickers", "VHN", "VPN", "DPH", "HV10"),
  scale("HB", "Brinell, hard metal ball", "Brinell", "HBW", "BHN"),
  scale("HRA", "Rockwell A, diamond cone, 60 kgf", "Rockwell A", "Ra"),
  scale("HRD", "Rockwell D, diamond cone, 100 kgf", "Rockwell D", "Rd"),
  scale("HR15N", "superficial Rockwell, 15 kgf: for thin steel", "15N", "Rockwell 15N"),
  scale("HR30N", "superficial Rockwell, 30 kgf: for thin steel", "30N", "Rockwell 30N"),
  scale("HR45N", "superficial Rockwell, 45 kgf: for thin steel", "45N", "Rockwell 45N"),
  scale("HRB", "Rockwell B, ball, 100 kgf: for soft steel", "Rockwell B", "Rb"),
  scale("MPa", "tensile strength, to 650 HV", "N/mm2", "tensile", "tensile strength", "Rm"),
] as const);

/** A hardness scale, or tensile strength, as people name it. */
export type Scale = (typeof SCALES)[number];

/** Scales that the conversion tables print. */
export type ScaleKey = Scale["word"];

/**
 * Finds a scale by any name in use.
 *
 * @throws NotAvailable naming the nearest scales.
 */
export const findScale = wordFinder(SCALES, { noun: "hardness scale", listedBy: "SCALES()" });
