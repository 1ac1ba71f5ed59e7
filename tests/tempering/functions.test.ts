import { describe } from "vitest";
import * as declared from "../../src/functions/tempering";
import { testExamples } from "../tools/worksheet-examples";

describe("examples of the declarations", () => {
  testExamples(declared);
});
