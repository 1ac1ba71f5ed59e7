import { YIELD_RATIO, YIELD_STRENGTH } from "../../core/hardness/strength";
import { EDGE_BENDING, edgeForLoad, edgeLoad, rollOrChip } from "../../core/mechanics/edge-load";
import { yieldBand } from "../../core/mechanics/yield";
import { rowFunction, scalarFunction } from "../declare";
import { yieldHardness, yieldTemper } from "../hardness/yield-arguments";
import { number } from "../parameters";
import { angle, contact } from "./arguments";

const edgeHardness = number({ ...yieldHardness, help: "Hardness at the edge." });

export const EDGE_LOAD = rowFunction({
  name: "EDGE_LOAD",
  summary:
    "Side load per mm of edge at which an edge begins to take a set, and at which the whole bevel does: a bound for comparing grinds, not a rating.",
  parameters: {
    hrc: edgeHardness,
    behind: number({
      label: "behind edge mm",
      quantity: "length",
      unit: "mm",
      min: 0.01,
      max: 10,
      help: "Thickness behind the edge bevel in mm.",
    }),
    angle: number(angle),
    contact,
    temperC: yieldTemper,
  },
  result: [
    { label: "side load at first set", unit: "N/mm" },
    { label: "depth set", unit: "mm" },
    { label: "note", unit: "text" },
    { label: "side load that sets the bevel", unit: "N/mm" },
  ],
  relations: [EDGE_BENDING, YIELD_STRENGTH, YIELD_RATIO],
  compute: ({ hrc, behind, angle: side, contact: depth, temperC }) => {
    const { likely, bounded } = yieldBand(hrc, temperC);
    const load = edgeLoad({ behind, angle: side, contact: depth }, likely);
    const bound = bounded ? "; the loads are lower bounds at this hardness" : "";
    return [load.first, load.depth, `${rollOrChip(hrc)}${bound}`, load.whole];
  },
});

export const EDGE_FOR_LOAD = scalarFunction({
  name: "EDGE_FOR_LOAD",
  summary:
    "Thickness behind the edge at which a side load just sets the whole bevel: the inverse of EDGE_LOAD's last figure.",
  parameters: {
    hrc: edgeHardness,
    load: number({
      label: "side load N/mm",
      quantity: "line load",
      unit: "N/mm",
      min: 0.001,
      max: 1e5,
      help: "Side load per mm of edge.",
    }),
    angle: number(angle),
    contact,
    temperC: yieldTemper,
  },
  result: { label: "behind the edge", unit: "mm" },
  relations: [EDGE_BENDING, YIELD_STRENGTH, YIELD_RATIO],
  compute: ({ hrc, load, angle: side, contact: depth, temperC }) =>
    edgeForLoad(load, { angle: side, contact: depth }, yieldBand(hrc, temperC).likely),
});
