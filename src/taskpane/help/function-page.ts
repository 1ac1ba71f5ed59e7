import { Refusal } from "../../core/refusal";
import { catalogue, functionNamed, type ListedFunction, NAMESPACE } from "../../functions/catalogue";
import type { AnyParameter, Column, Example, WorksheetFunction } from "../../functions/declare";
import { evaluate } from "../../functions/evaluate";
import { examplesOf } from "../../functions/examples";
import { signature } from "../../functions/metadata";
import { formulaOf } from "../parts/formula";
import { code, escaped, type HelpPage, table } from "./html";

const TAKES: Readonly<Record<AnyParameter["takes"], string>> = {
  cell: "a cell, or a range for a result each",
  series: "a range: the stations of one blade",
  range: "a range that belongs together",
  table: "a range with its headings",
};

function argumentRow(parameter: AnyParameter): string[] {
  const { label, help, accepts, optional, fallbackText, takes } = parameter;
  const left = fallbackText === "" ? "may be left out" : `${fallbackText} where left out`;
  return [
    `<strong>${escaped(label)}</strong>`,
    escaped(help),
    escaped(accepts),
    TAKES[takes],
    optional ? escaped(left) : "needed",
  ];
}

function argumentTable(fn: WorksheetFunction): string {
  const rows = Object.values(fn.parameters).map(argumentRow);
  if (rows.length === 0) return "<p>It takes no argument.</p>";
  return table("Arguments", ["argument", "what it is", "accepted", "given as", "if left out"], rows);
}

function columnRow({ label, unit }: Column): string[] {
  return [escaped(label), unit === "text" ? "words" : unit === "" ? "a number" : escaped(unit)];
}

function resultTable(fn: WorksheetFunction): string {
  const columns = fn.shape === "scalar" ? [fn.result] : fn.result;
  const shape = {
    scalar: "one value; for a range, one value a cell",
    row: "a row; for a column of inputs, a row each",
    table: "a table for one set of arguments",
  }[fn.shape];
  return table(`What it gives: ${shape}`, ["column", "unit"], columns.map(columnRow));
}

function givenText({ gives, within }: Example): string {
  const rows = Array.isArray(gives) ? (Array.isArray(gives[0]) ? gives : [gives]) : [[gives]];
  const text = rows.map((row) => (row as unknown[]).join(", ")).join("; ");
  return within === undefined ? text : `${text} (to within ${within})`;
}

function exampleTable(fn: WorksheetFunction): string {
  const rows = examplesOf(fn).map((example) => [
    code(formulaOf(fn, example.given)),
    escaped(givenText(example)),
    escaped(example.source),
  ]);
  return table(
    "Worked cases; each is run as a test; … stands for words that the test does not read",
    ["formula", "gives", "where the figure comes from"],
    rows,
  );
}

/** What EVIDENCE says of a function, so that the page and the sheet cannot differ. */
function evidenceTable({ name }: WorksheetFunction): string {
  const evidence = functionNamed("EVIDENCE");
  if (evidence === undefined) throw new Error("EVIDENCE is not declared");
  const rows = evaluate(evidence, [name, null]).map((row) =>
    row.slice(0, 5).map((cell) => (cell instanceof Refusal ? "" : escaped(String(cell)))),
  );
  return table(
    "Where the answer comes from",
    ["relation", "source", "range", "expected error", "kind of evidence"],
    rows,
  );
}

const ERRORS = `<h2>Errors</h2>
<p><code>#VALUE!</code> means that an argument is malformed, <code>#N/A</code> that a name is unknown, that the published range is left, or that nothing is held. Either carries a sentence
that names the argument, what was given and what is accepted: point at the cell's error mark, or open the pane's page <em>This cell</em>. Only the cell concerned shows it.
<code>#NAME?</code> means that the add-in was not loaded when the formula was typed: load it and enter the formula once more.</p>`;

/** Help of one worksheet function, wholly from its declaration. */
export function functionPage(fn: ListedFunction): HelpPage {
  const same = catalogue.filter(({ topic, name }) => topic === fn.topic && name !== fn.name);
  const links = same.map(({ name }) => `<a href="${name}.html">${name}</a>`).join(", ");
  return {
    file: `${fn.name}.html`,
    title: `${NAMESPACE}.${fn.name}`,
    body: [
      `<p class="lead">${escaped(fn.summary)}</p>`,
      `<p class="call">${code(`=${NAMESPACE}.${signature(fn)}`)}</p>`,
      argumentTable(fn),
      resultTable(fn),
      exampleTable(fn),
      evidenceTable(fn),
      ERRORS,
      `<h2>Near it</h2>\n<p>${escaped(fn.topic)}: ${links}</p>`,
    ].join("\n"),
  };
}
