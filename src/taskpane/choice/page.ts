import { sentenceOf } from "../../core/refusal";
import type { HostPort } from "../../host/port";
import type { PageContext, RenderPage } from "../page";
import { ask, list } from "../parts/ask";
import { afterPause, element, fill } from "../parts/dom";
import { evidenceOf } from "../parts/evidence";
import { button, choiceField, fieldRow, linesField, textField } from "../parts/fields";
import { insertControl } from "../parts/insert";
import { type LineCell, lineCell } from "../parts/selected-line";
import { blockInsert } from "../parts/table-insert";
import { answerBlocks, listBlock } from "./answer";
import { type Asked, argumentsOf, formulaFor, rackOf } from "./question";

const OPEN = "not settled yet";
const FORGE = "no, a forge only";

/** Which steel: four questions, answered with three steels in sentences and the rest as a table. */
export const render: RenderPage = (root, context) => {
  const { fields, asked } = questions();
  const answer = element("div", { "aria-live": "polite" });
  const reply = () => ask("STEELS_FOR", ...argumentsOf(asked()));
  const insert = insertControl(context.port, () => formulaFor(asked()));
  const show = () => {
    const take = takeIntoLine(context);
    fill(answer, ...answerBlocks(reply(), rackOf(asked()).length > 0, take));
    insert.refresh();
  };
  for (const { control } of Object.values(fields)) control.addEventListener("input", afterPause(show));
  const { use, thickness, length, quench, kiln, stainless, rack } = fields;
  const form = element(
    "section",
    { "aria-label": "What is wanted" },
    use.block,
    fieldRow(thickness, length),
    fieldRow(quench, kiln),
    stainless.block,
    rack.block,
  );
  const sheet = blockInsert(context.port, () => ({
    title: "Which steel",
    block: listBlock(asked().use, reply()),
  }));
  const evidence = evidenceOf(
    { functionName: "STEELS_FOR" },
    "How the list is ordered and where its figures come from",
  );
  root.append(form, answer, insert.block, ...(sheet === null ? [] : [sheet]), evidence);
  show();
  return undefined;
};

function questions() {
  const fields = {
    use: choiceField({ label: "What is it for?", line: "use" }, list(ask("USES"))),
    thickness: textField({ label: "How thick at the quench, mm?", line: "thickness" }),
    length: textField({ label: "How long, mm?", line: "length" }),
    quench: choiceField({ label: "What can you quench in?", line: "quench" }, [
      OPEN,
      ...list(ask("QUENCHES")),
    ]),
    kiln: choiceField({ label: "Have you a kiln?" }, ["yes", FORGE]),
    stainless: choiceField({ label: "Must it be stainless?" }, ["either", "yes", "no"]),
    rack: linesField(
      {
        label: "Hold it against my rack",
        hint: "One steel a line, its price a kg behind it if you like: 5160 4.20. Empty: every steel of the library.",
      },
      3,
    ),
  };
  const asked = (): Asked => ({
    use: fields.use.control.value,
    thickness: fields.thickness.control.value,
    length: fields.length.control.value,
    quench: fields.quench.control.value === OPEN ? "" : fields.quench.control.value,
    kiln: fields.kiln.control.value === FORGE ? "no" : "yes",
    stainless: fields.stainless.control.value,
    rack: fields.rack.control.value,
  });
  return { fields, asked };
}

/** A button that makes a steel that of the line which the selection stands on; without a line it goes into the selected cell. */
function takeIntoLine({ port, state }: PageContext): (name: string) => HTMLElement | null {
  return (name) => {
    if (!port.hasSheet) return null;
    const status = element("span", { role: "status" });
    const press = button("Take it for the line", () => {
      state.steel = name;
      void takeName(port, name, status);
    });
    return element("p", {}, press, " ", status);
  };
}

async function takeName(port: HostPort, name: string, status: HTMLElement): Promise<void> {
  try {
    const cell = await lineCell(port, "steel");
    if (cell === null) await writeName(port, name, status);
    else await writeIntoLine(cell, name, status);
  } catch (problem) {
    fill(status, sentenceOf(problem));
  }
}

/** The steel of a line is not written over unasked. */
async function writeIntoLine(cell: LineCell, name: string, status: HTMLElement): Promise<void> {
  const { line, held } = cell;
  const write = async () => {
    await cell.write(name);
    fill(status, `Line ${line} is of ${name} now.`);
  };
  if (held === "" || held === name) return write();
  fill(
    status,
    `Line ${line} is of ${held}. `,
    button("Replace it", () => void write().catch((problem) => fill(status, sentenceOf(problem)))),
  );
}

async function writeName(port: HostPort, name: string, status: HTMLElement): Promise<void> {
  const block = { rows: [[name]], heading: 0 };
  const write = async () => fill(status, `Written into ${await port.writeBlock(block)}.`);
  const place = await port.placeFor(block);
  if (place === null) fill(status, "Select a line of the run first, or a cell.");
  else if (place.filled === 0) await write();
  else
    fill(
      status,
      `${place.address} is filled already. `,
      button("Replace it", () => void write()),
    );
}
