import { expect, test } from "vitest";
import { fitAll, fitText } from "../tools/fit";

/** `vitest run -u tests/tempering/fits.test.ts` writes the file anew after a change of the rows. */
test("the fitted curves are those that the printed rows give today", async () => {
  await expect(fitText(fitAll())).toMatchFileSnapshot("../../src/core/tempering/fits.json");
});
