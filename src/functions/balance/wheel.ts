import { EDGE_GEOMETRY } from "../../core/shape/balance-relations";
import { fullerWidth, hollowDepth, wheelDiameter } from "../../core/shape/wheel";
import { scalarFunction } from "../declare";
import { number } from "../parameters";
import { size } from "./arguments";

const topic = "Shape, mass and balance";
const height = number(
  size({ label: "height mm", help: "Height of the ground face from the edge up, in mm." }),
);

export const HOLLOW_DEPTH = scalarFunction({
  name: "HOLLOW_DEPTH",
  topic,
  summary: "Depth of the hollow that a wheel grinds over a height of face.",
  parameters: {
    diameter: number(size({ label: "wheel diameter mm", help: 'Diameter of the wheel in mm, or "10 in".' })),
    height,
  },
  result: { label: "depth", unit: "mm" },
  relations: [EDGE_GEOMETRY],
  compute: ({ diameter, height }) => hollowDepth(diameter, height),
  examples: [
    { given: [254, 16], gives: 0.2522, within: 5e-5, source: "by hand: 127 - √(127² - 8²)" },
    { given: ["2 in", 16], gives: 1.2927, within: 5e-5, source: "by hand: 25.4 - √(25.4² - 8²)" },
    { given: ["72 in", 16], gives: 0.035, within: 5e-5, source: "by hand: 914.4 - √(914.4² - 8²)" },
  ],
});

export const WHEEL = scalarFunction({
  name: "WHEEL",
  topic,
  summary: "Diameter of the wheel that grinds a hollow of the depth asked over a height of face.",
  parameters: {
    height,
    depth: number(size({ label: "depth mm", help: "Depth in the middle of the hollow, in mm." })),
  },
  result: { label: "wheel diameter", unit: "mm" },
  relations: [EDGE_GEOMETRY],
  compute: ({ height, depth }) => wheelDiameter(height, depth),
  examples: [
    {
      given: [16.0954, 0.25524],
      gives: 254,
      within: 0.02,
      source: "by hand: 2 (16.0954² / 4 + 0.25524²) / (2 × 0.25524)",
    },
  ],
});

export const FULLER_WIDTH = scalarFunction({
  name: "FULLER_WIDTH",
  topic,
  summary: "Width of the fuller that a tool of a radius leaves at a depth, on a flat face.",
  parameters: {
    radius: number(size({ label: "radius mm", help: "Radius of the wheel or scraper in mm." })),
    depth: number(size({ label: "depth mm", help: "Depth of the fuller in mm." })),
  },
  result: { label: "fuller width", unit: "mm" },
  relations: [EDGE_GEOMETRY],
  compute: ({ radius, depth }) => fullerWidth(radius, depth),
  examples: [
    { given: [25.4, 1.5], gives: 17.199, within: 5e-4, source: "by hand: 2 √(2 × 25.4 × 1.5 - 1.5²)" },
    { given: [12.7, 1.5], gives: 11.975, within: 5e-4, source: "by hand: 2 √(2 × 12.7 × 1.5 - 1.5²)" },
    { given: [50.8, 1.5], gives: 24.507, within: 5e-4, source: "by hand: 2 √(2 × 50.8 × 1.5 - 1.5²)" },
  ],
});
