import { EDGE_GEOMETRY } from "../../core/shape/edge";
import { fullerWidth, hollowDepth, wheelDiameter } from "../../core/shape/wheel";
import { scalarFunction } from "../declare";
import { number } from "../parameters";
import { size } from "./balance-arguments";

const height = number(
  size({ label: "height mm", help: "Height of the ground face from the edge up, in mm." }),
);

export const HOLLOW_DEPTH = scalarFunction({
  name: "HOLLOW_DEPTH",
  summary: "Depth of the hollow that a wheel grinds over a height of face.",
  parameters: {
    diameter: number(size({ label: "wheel diameter mm", help: 'Diameter of the wheel in mm, or "10 in".' })),
    height,
  },
  result: { label: "depth", unit: "mm" },
  relations: [EDGE_GEOMETRY],
  compute: ({ diameter, height }) => hollowDepth(diameter, height),
});

export const WHEEL = scalarFunction({
  name: "WHEEL",
  summary: "Diameter of the wheel that grinds a hollow of the depth asked over a height of face.",
  parameters: {
    height,
    depth: number(size({ label: "depth mm", help: "Depth in the middle of the hollow, in mm." })),
  },
  result: { label: "wheel diameter", unit: "mm" },
  relations: [EDGE_GEOMETRY],
  compute: ({ height, depth }) => wheelDiameter(height, depth),
});

export const FULLER_WIDTH = scalarFunction({
  name: "FULLER_WIDTH",
  summary: "Width of the fuller that a tool of a radius leaves at a depth, on a flat face.",
  parameters: {
    radius: number(size({ label: "radius mm", help: "Radius of the wheel or scraper in mm." })),
    depth: number(size({ label: "depth mm", help: "Depth of the fuller in mm." })),
  },
  result: { label: "fuller width", unit: "mm" },
  relations: [EDGE_GEOMETRY],
  compute: ({ radius, depth }) => fullerWidth(radius, depth),
});
