import { carbonSpread } from "../../core/steel/decode/carbon-spread";
import { type Decoded, decodeName } from "../../core/steel/decode/decode-name";
import type { Part } from "../../core/steel/decode/part";
import { namingRelations } from "../../core/steel/decode/relations";
import { type Answer, tableFunction } from "../declare";
import { text } from "../parameters";

/** Says of which name the figure is: another name of the grade may have been given. */
function sentence({ name }: Decoded, says: string): string {
  const figure = /^"([^"]+)": /.exec(says);
  return figure === null ? `${name}: ${says}` : `"${figure[1]}" of ${name}: ${says.slice(figure[0].length)}`;
}

function row(decoded: Decoded, { element, content, says, isAbout }: Part): Answer[] {
  const amount = content === null || isAbout ? "" : content;
  if (element !== "C") return [element, amount, says];
  return [element, amount, `${sentence(decoded, says)}; decoded from the name; ${carbonSpread(decoded)}`];
}

export const DECODE = tableFunction({
  name: "DECODE",
  summary:
    "What the rule of its system reads out of a steel's name: nominal contents, not limits; an empty amount is not in the name.",
  parameters: {
    designation: text({
      label: "designation",
      kind: "designation",
      help: 'A name of SAE, AISI, UNS, EN, JIS, GB or GOST, with the system in front where two share it: "5160", "51CrV4", "GB T8".',
      accepts: 'a designation such as "5160" or "51CrV4"',
      find: (given) => decodeName(String(given)),
    }),
  },
  result: [
    { label: "element", unit: "text" },
    { label: "content", unit: "mass %" },
    { label: "what says it", unit: "text" },
  ],
  relations: namingRelations,
  compute: ({ designation }) => designation.parts.map((part) => row(designation, part)),
});
