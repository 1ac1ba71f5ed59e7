/** Width of a digit of the usual letters, in pixels (Calibri 11 at 96 dots an inch). */
const DIGIT = 7;
const POINTS_A_PIXEL = 0.75;

/** Pixels of a column from its width in digits, as ECMA-376 Part 1, 18.3.1.13 counts them. */
export const columnPixels = (width: number): number =>
  Math.trunc(((256 * width + Math.trunc(128 / DIGIT)) / 256) * DIGIT);

/** The width in digits that gives a column its pixels. */
export const columnWidth = (pixels: number): number => Math.trunc((pixels / DIGIT) * 256) / 256;

export const rowPixels = (points: number): number => Math.round(points / POINTS_A_PIXEL);

export const rowPoints = (pixels: number): number => pixels * POINTS_A_PIXEL;
