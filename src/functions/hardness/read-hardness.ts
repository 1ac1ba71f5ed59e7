import { readHardness } from "../../core/hardness/read-hardness";
import { rowFunction } from "../declare";
import { text } from "../parameters";

export const READ_HARDNESS = rowFunction({
  name: "READ_HARDNESS",
  summary: 'Low, aim and high of a hardness requirement as drawings write it: "58-60", "60 ±1", "59".',
  parameters: {
    band: text({
      label: "text",
      kind: "hardness requirement",
      help: 'Requirement in Rockwell C: "58-60", "60 ±1", "60 +1/-2" or "59".',
      accepts: 'a requirement in Rockwell C such as "58-60"',
      find: readHardness,
    }),
  },
  result: [
    { label: "low", unit: "HRC" },
    { label: "aim", unit: "HRC" },
    { label: "high", unit: "HRC" },
  ],
  relations: [],
  compute: ({ band }) => [band.low, band.aim, band.high],
});
