import { usesContaining } from "../../core/blade/bands";
import { NotAvailable } from "../../core/refusal";
import { tableFunction } from "../declare";
import { optionalText } from "../parameters";

function listed(contains: string): string[][] {
  const names = usesContaining(contains);
  if (names.length === 0) throw new NotAvailable(`no use holds "${contains}"; USES() lists them all`);
  return names.map((name) => [name]);
}

export const USES = tableFunction({
  name: "USES",
  summary: "Every use that has a usual hardness, as a list for drop-downs; or those that hold a text.",
  parameters: {
    contains: optionalText({
      label: "contains",
      kind: "text",
      help: "Part of a name, or one of kitchen, field, tool, chopper, sword; all uses where left out.",
      accepts: "part of a name",
      find: String,
      fallback: "",
    }),
  },
  result: [{ label: "use", unit: "text" }],
  relations: [],
  compute: ({ contains }) => listed(contains),
});
