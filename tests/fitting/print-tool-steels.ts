import { fitToolSteels } from "./fit-tool-steels";

for (const [curve, coefficients] of fitToolSteels())
  process.stdout.write(`${curve} ${coefficients.map((value) => value.toFixed(4)).join(", ")}\n`);
