import file from "../../src/core/tempering/fits.json";

/** Every grade that has a curve of its own, as the fit wrote them. */
export const GRADES_WITH_CURVE: readonly string[] = [...new Set(file.curves.flatMap(({ grades }) => grades))];
