import { randomFrom } from "./brute-force";

/**
 * Orders drawn the way in which E. Falkenauer drew those of OR-Library's bin packing set (Journal of Heuristics 2,
 * 1996, 5-30; the recipe from memory, the draws our own): uniform, whole lengths of 20 to 100 into 150; triplets into
 * 1000, the longest of each 380 to 490, the second from 250 up to half of the rest, the third what is then missing, so
 * that every bar is filled to the last step and the optimum is a third of the pieces.
 */
export function uniform(count: number, seed: number): number[] {
  const random = randomFrom(seed);
  return Array.from({ length: count }, () => 20 + Math.floor(random() * 81));
}

export function triplets(count: number, seed: number): number[] {
  const random = randomFrom(seed);
  return Array.from({ length: count / 3 }, () => {
    const longest = 380 + Math.floor(random() * 111);
    const most = Math.floor((1000 - longest) / 2);
    const second = 250 + Math.floor(random() * (most - 250 + 1));
    return [longest, second, 1000 - longest - second];
  }).flat();
}
