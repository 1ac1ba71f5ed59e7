import { describe, expect, it } from "vitest";
import { type Asked, argumentsOf, formulaFor, rackOf } from "../../src/taskpane/choice/question";

const asked: Asked = {
  use: "Wood carving",
  thickness: "",
  length: "",
  quench: "",
  kiln: "yes",
  stainless: "either",
  rack: "",
};

describe("what the page Which steel asks", () => {
  it("leaves out what was not answered", () => {
    expect(formulaFor(asked)).toBe('=BLADE.STEELS_FOR("Wood carving",,,,,,,20)');
  });

  it("writes inches as mm, a quench, a kiln and stainless as words", () => {
    const all = {
      ...asked,
      thickness: "1/8 in",
      length: "450",
      quench: "fast oil",
      kiln: "no",
      stainless: "no",
    } as const;
    expect(formulaFor(all)).toBe('=BLADE.STEELS_FOR("Wood carving",3.175,"fast oil",450,"no",,,20,"no")');
  });

  it("keeps a length it cannot read, so that the function says what is wrong with it", () => {
    expect(argumentsOf({ ...asked, thickness: "three" })[1]).toBe("three");
  });

  it("reads a rack line by line, with or without prices", () => {
    const rack = "5160 4.20\n\n 80CrV2; 6,50\n1095\nC 0.95 Mn 0.4\n";
    expect(rackOf({ rack })).toEqual([
      { steel: "5160", price: 4.2 },
      { steel: "80CrV2", price: 6.5 },
      { steel: "1095", price: null },
      { steel: "C 0.95 Mn 0.4", price: null },
    ]);
  });
});
