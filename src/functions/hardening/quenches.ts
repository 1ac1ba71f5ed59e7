import { QUENCH_MEDIA } from "../../core/hardening/quench-media";
import { tableFunction } from "../declare";

export const QUENCHES = tableFunction({
  name: "QUENCHES",
  summary: "Every quench word that the functions accept, as a list for drop-downs.",
  parameters: {},
  result: [{ label: "quench", unit: "text" }],
  relations: [],
  compute: () => QUENCH_MEDIA.map(({ word }) => [word]),
});
