/** Hardness of fully martensitic steel by the A255 polynomial [HRC], 0.10 to 0.70 % C. */
export function initialHardness(carbon: number): number {
  const c = carbon;
  return 33.087 + c * (50.723 + c * (33.662 + c * (-2.7048 + c * (-107.02 + c * 43.523))));
}
