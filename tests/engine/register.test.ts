import { expect, it } from "vitest";
import { registration } from "../../src/engine/register";
import { PRODUCT_THIRD } from "./sample-functions";

it("offers the grid a hint for every argument, with which may be left out", () => {
  const { function: executors, description } = registration([PRODUCT_THIRD]);
  expect(executors.map(([, name]) => name)).toEqual(["BLADE.PRODUCT_THIRD"]);
  const [hint] = description;
  expect(hint?.functionName).toBe("BLADE.PRODUCT_THIRD");
  expect(hint?.functionParameter.map(({ name, require }) => [name, require])).toEqual([
    ["width", 1],
    ["height", 0],
    ["depth", 0],
  ]);
  expect(hint?.functionParameter.at(1)?.detail).toBe("The height. 1 where left out.");
  expect(hint?.description).toContain("volume [mm³]");
});
