import { readFileSync } from "node:fs";
import { TOPICS } from "../../src/functions/topics";
import { askedBy, type Shown, shownBy } from "./library-sources";

const EXAMPLE = "tests/library/five-tasks.mjs";

const INTRODUCTION = `# Blade Metallurgy as a library

The metallurgy, geometry and counting behind the worksheet functions, for programs: ES modules only, without any
dependency, for Node 20.19 and newer and for pages, with types for \`"moduleResolution": "nodenext"\` or \`"bundler"\`.
In the repository \`npm run pack:library\` makes the package, a file to be installed with \`npm install FILE.tgz\`.

Units are fixed, as in the worksheet: mm, g, °C, h, HRC, mass %. **A temper is in °C: 400 is 400 °C, and nothing asks
whether °F was meant**, as the worksheet functions do. A steel, a grind, a quench and a use may be given by their name.
What cannot be answered is thrown as a \`Refusal\`: \`InvalidValue\` for what cannot be, \`NotAvailable\` where nothing is
known, each with a sentence. \`attempt(() => …)\` gives the refusal back instead. Tables such as \`USES\` are frozen.
A line for \`planRun\` needs steel, good and yieldShare; what else is left out is read as \`RUN_PLAN\` reads an empty cell.
`;

const BEFORE_FUNCTIONS = `
## The worksheet functions themselves

\`blade-metallurgy/functions\` answers as a cell does, texts with units and all, and throws nothing: a refusal stands in
its cell. \`evaluate(functionNamed("TEMPERED_RANGE"), ["1095", "400 °F"])\` gives rows of cells; the name may carry
\`BLADE.\`, a range is a list of rows. The labels and units of the columns are \`functionNamed(…).result\`, and
\`evaluateRecords\` gives each row as an object by those labels. [All worksheet functions](functions.md) ·
[how accurate](accuracy.md).

## What the library shows

Each line: worksheet functions that rest on it, the call, what it does. Fields of arguments and answers are explained
where the types are declared; every type of a call is exported by its name.
`;

const cell = (text: string): string => text.replaceAll("|", "\\|");

function row({ name, signature, line }: Shown, worksheet: ReadonlyMap<string, ReadonlySet<string>>): string {
  const users = [...worksheet].filter(([, asked]) => asked.has(name)).map(([user]) => user);
  return `| ${users.join(", ")} | \`${cell(signature)}\` | ${cell(line)} |`;
}

function topicTable(topic: string, worksheet: ReadonlyMap<string, ReadonlySet<string>>): string {
  const rows = shownBy(topic.toLowerCase()).map((shown) => row(shown, worksheet));
  return [`**${topic}**`, "", "| worksheet | library | |", "|---|---|---|", ...rows].join("\n");
}

/** Worksheet functions that nothing of the library stands for by itself. */
function others(worksheet: ReadonlyMap<string, ReadonlySet<string>>, shown: ReadonlySet<string>): string {
  const names = [...worksheet].filter(([, asked]) => ![...asked].some((name) => shown.has(name)));
  return names.map(([name]) => name).join(", ");
}

/** The page of the library, made from the sources: it lists nothing by hand. */
export function libraryPage(): string {
  const topics = TOPICS.filter((topic) => topic !== "About");
  const worksheet = new Map(topics.flatMap((topic) => [...askedBy(topic.toLowerCase())]));
  const shown = new Set(topics.flatMap((topic) => shownBy(topic.toLowerCase()).map(({ name }) => name)));
  return [
    INTRODUCTION,
    "## Five tasks\n",
    `\`\`\`js\n${readFileSync(EXAMPLE, "utf8").trimEnd()}\n\`\`\``,
    BEFORE_FUNCTIONS,
    topics.map((topic) => topicTable(topic, worksheet)).join("\n\n"),
    `\nThrough \`evaluate\` alone: ${others(worksheet, shown)}.\n`,
    "## Licence\n",
    "MIT. The tempering curves rest in part on the open data set of Raiipa, CC BY 4.0.",
    "",
  ].join("\n");
}
