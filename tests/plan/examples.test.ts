import { describe } from "vitest";
import * as plan from "../../src/functions/plan";
import { testExamples } from "../stock/call";

describe("examples of the declarations", () => {
  testExamples(plan);
});
