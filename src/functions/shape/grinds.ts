import { GRINDS as WORDS } from "../../core/shape/grinds";
import { tableFunction } from "../declare";

export const GRINDS = tableFunction({
  name: "GRINDS",
  summary: "Every grind word that the shape functions accept, as a list for drop-downs.",
  parameters: {},
  result: [{ label: "grind", unit: "text" }],
  relations: [],
  compute: () => WORDS.map(({ word }) => [word]),
});
