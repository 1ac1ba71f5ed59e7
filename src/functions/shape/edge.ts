import { askIfIncluded, EDGE_GEOMETRY, edgeAngle, edgeBevel, grindAngle } from "../../core/shape/edge";
import { scalarFunction } from "../declare";
import { number } from "../parameters";
import { size } from "./balance-arguments";

const edge = number(
  size({ label: "edge mm", help: "Thickness behind the edge, at the shoulder of the edge bevel, in mm." }),
);

export const EDGE_BEVEL = scalarFunction({
  name: "EDGE_BEVEL",
  summary:
    "Height of the edge bevel across the blade, from the thickness behind the edge and the angle a side.",
  parameters: {
    edge,
    angle: number({
      label: "angle a side",
      quantity: "angle",
      unit: "°",
      min: 0.1,
      max: 45,
      askOver: askIfIncluded,
      help: "Angle of one side in degrees: 15 for a 30° edge.",
    }),
  },
  result: { label: "bevel height", unit: "mm" },
  relations: [EDGE_GEOMETRY],
  compute: ({ edge, angle }) => edgeBevel(edge, angle),
});

export const EDGE_ANGLE = scalarFunction({
  name: "EDGE_ANGLE",
  summary: "Angle a side of an edge, from the thickness behind it and the width of the bevel's face.",
  parameters: {
    edge,
    face: number(size({ label: "face mm", help: "Width of the bevel's face from shoulder to edge, in mm." })),
  },
  result: { label: "angle a side", unit: "°" },
  relations: [EDGE_GEOMETRY],
  compute: ({ edge, face }) => edgeAngle(edge, face),
});

export const GRIND_ANGLE = scalarFunction({
  name: "GRIND_ANGLE",
  summary: "Included angle between the faces of a full flat grind, both sides together.",
  parameters: {
    width: number(size({ label: "width mm", help: "Spine to edge, in mm." })),
    thickness: number(size({ label: "thickness mm", help: "At the spine, in mm." })),
    edge: number({
      label: "edge mm",
      quantity: "length",
      unit: "mm",
      min: 0,
      max: 1000,
      help: "Thickness behind the edge in mm; 0 where it is ground to nothing.",
    }),
  },
  result: { label: "included angle", unit: "°" },
  relations: [EDGE_GEOMETRY],
  compute: ({ width, thickness, edge }) => grindAngle(width, thickness, edge),
});
