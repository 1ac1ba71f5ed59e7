import { describe } from "vitest";
import * as run from "../../src/functions/run";
import { testExamples } from "../stock/call";

describe("examples of the declarations", () => {
  testExamples(run);
});
