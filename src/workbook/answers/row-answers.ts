import { numberText } from "../../core/quantity-text";
import { sentenceOf } from "../../core/refusal";
import { functionNamed } from "../../functions/catalogue";
import { evaluate } from "../../functions/evaluate";
import { momentText } from "../share/moments";
import type { PlanSheet } from "../sheets/plan-sheet";
import { type AnswerRow, type AnswerTable, type Held, textIn } from "./answer-tables";
import { type AnswerField, elementOf, fieldsOf } from "./forms";
import type { AskedLine, Plan } from "./lines-asked";
import { pricePerKilogram } from "./money";
import { type Draft, type PlanChange, valueBefore } from "./proposal";
import { readAnswer } from "./read-answer";
import type { Reading } from "./reading";

/** Where answers of a row go: the plan's sheet and the row in it. */
interface Target {
  readonly sheet: PlanSheet;
  readonly name: string;
  readonly row: number;
}

/** All that the answers of one row are read by. */
export interface RowContext {
  readonly plan: Plan;
  readonly table: AnswerTable;
  readonly row: AnswerRow;
  readonly line: AskedLine;
  readonly file: string;
  readonly from: string;
  /** Whom the copy was made for; empty where neither the answer nor the register says. */
  readonly whose: string;
  /** Day of the answer as the plan's calendar counts it, and in words. */
  readonly day: number | undefined;
  readonly on: string;
}

type Read = Reading & { readonly field: AnswerField; readonly given: string };

/** A price further from the last one than this share is asked about; common practice, no source. */
const PRICE_APART = 0.2;

const wordsOf = (value: unknown) => (value === undefined ? "" : String(value));

/** The row of a sheet in which all of these stand. */
function rowWith(sheet: PlanSheet, wanted: Readonly<Record<string, string>>): number | undefined {
  const [first = ""] = Object.keys(wanted);
  return sheet
    .rowsWith(first)
    .find((row) =>
      Object.entries(wanted).every(([heading, word]) => wordsOf(sheet.under(heading, row).value) === word),
    );
}

function wantedRow({ table, line }: RowContext): Readonly<Record<string, string>> {
  const [first = "", second = ""] = line.line.split("/");
  switch (table.form.mark) {
    case "O":
      return { Steel: second };
    case "H":
      return { Batch: first, Line: second };
    default:
      return { Line: first };
  }
}

/** The row that the answers of a line go to. @param name - The plan's sheet; that of the form unless given. */
function targetOf(context: RowContext, name = context.table.form.sheet): Target | undefined {
  const sheet = context.plan.sheets.get(name);
  const row = sheet && rowWith(sheet, wantedRow(context));
  return sheet === undefined || row === undefined ? undefined : { sheet, name, row };
}

/** The change of a cell under a heading; none where it holds that already. */
function changeOf(
  target: Target | undefined,
  heading: string,
  value: number | string,
  isDay = false,
): PlanChange[] {
  const column = target?.sheet.columnOf(heading);
  if (target === undefined || column === undefined) return [];
  const before = target.sheet.cell(target.row, column).value;
  const isSame =
    typeof before === "number" && typeof value === "number"
      ? Math.abs(before - value) < 1e-9
      : wordsOf(before) === String(value);
  const change = { sheet: target.name, row: target.row, column, value, before: wordsOf(before) };
  return isSame ? [] : [isDay ? { ...change, isDay } : change];
}

/** Whether a change of nothing means that the plan holds the answer already, not that it has no place for it. */
const isHeldBy = (target: Target | undefined, heading: string | undefined, changes: readonly PlanChange[]) =>
  changes.length === 0 && heading !== undefined && target?.sheet.columnOf(heading) !== undefined;

/** A fact that the plan holds otherwise on a sheet of what came is not replaced unasked. */
const replaces = ({ sheet }: AnswerField, changes: readonly PlanChange[]): string[] =>
  sheet === undefined
    ? []
    : changes.flatMap((change) =>
        change.before === ""
          ? []
          : [`${valueBefore(change)} stands on ${sheet} already and would be replaced`],
      );

/** An answer as it was written; a day that the file holds as a figure, as a day. */
function givenIn(held: Held, { kind }: AnswerField): string {
  if (held !== undefined && "error" in held) return held.error;
  const text = textIn(held);
  return kind === "date" && /^\d+$/.test(text) ? (momentText(Number(text), "date", false) ?? text) : text;
}

/** Reads every answer of a row; those that cannot be read become refusals. */
function readRow(context: RowContext): { readonly read: Map<string, Read>; readonly refused: Draft[] } {
  const { plan, table, row } = context;
  const read = new Map<string, Read>();
  const refused: Draft[] = [];
  for (const field of fieldsOf(table.form, plan.elements)) {
    const held = row.cells.get(field.heading);
    const given = givenIn(held, field);
    try {
      const reading = readAnswer(held, field, plan);
      if (reading !== undefined) read.set(field.heading, { ...reading, field, given });
    } catch (problem) {
      refused.push({ ...draft(context, field.heading, given, "", ""), refusal: sentenceOf(problem) });
    }
  }
  return { read, refused };
}

function draft(context: RowContext, asked: string, given: string, readAs: string, unit: string): Draft {
  const { table, row, line, file, from, on } = context;
  return {
    copy: row.key.number,
    paper: table.form.name,
    from,
    on,
    file,
    line: line.line,
    asked,
    given,
    readAs,
    unit,
    changes: [],
    doubts: [],
  };
}

/** What the copy told of the line and the plan says otherwise now. */
function drift({ table, row, line }: RowContext): string[] {
  return table.form.told.flatMap(({ heading }) => {
    const held = row.cells.get(heading);
    if (held === undefined) return [];
    const [then, now] = [textIn(held), wordsOf(line.told[heading]).replace(/\s+/g, " ").trim()];
    const isNear = Number.isFinite(Number(then)) && Math.abs(Number(then) - Number(now)) < 1e-6;
    return then === now || isNear
      ? []
      : [`${heading} was ${then} in the copy and is ${now || "empty"} in the plan now`];
  });
}

function halfFilled({ table }: RowContext, read: ReadonlyMap<string, Read>): string[] {
  const missing = table.form.needs.filter((heading) => !read.has(heading));
  if (read.get("Answer")?.value === "changed" && !read.has("Pieces wanted")) missing.push("Pieces wanted");
  if (read.has("Price for") && !read.has("Price") && !missing.includes("Price")) missing.push("Price");
  return read.size === 0 || missing.length === 0
    ? []
    : [`the row is half filled: ${missing.join(", ")} missing`];
}

const UNITS: Readonly<Partial<Record<AnswerField["kind"], string>>> = {
  temperature: "°C",
  hardness: "HRC",
  "mass %": "mass %",
  count: "pieces",
  lengths: "mm",
};

/** An answer that goes as it is under its heading. @param target - The row; that of the line unless given. */
function simple(
  context: RowContext,
  { field, given, value, shown, doubt }: Read,
  target = targetOf(context, field.sheet),
): Draft {
  const unit = field.kind === "money" ? context.plan.currency : (UNITS[field.kind] ?? "");
  const made = draft(context, field.heading, given, shown, unit);
  if (field.goesTo !== undefined) made.changes = changeOf(target, field.goesTo, value, field.kind === "date");
  made.isHeld = isHeldBy(target, field.goesTo, made.changes);
  made.doubts.push(...(doubt === undefined ? [] : [doubt]), ...replaces(field, made.changes));
  return made;
}

/** Masses that a price of the line may be for. */
function unitsOf({ line, table }: RowContext) {
  const kilograms = Number(line.told.kg ?? 0);
  const share = (count: number) => (count > 0 ? kilograms / count : 0);
  const rounded = (mass: number) => Math.round(mass * 1000) / 1000;
  if (table.form.audience === "supplier")
    return { bar: rounded(share(Number.parseFloat(String(line.told.Bars ?? "")))) };
  return { piece: rounded(share(Number(line.told.Pieces ?? 0))), lot: kilograms };
}

function againstLast(value: number, before: string): string[] {
  const last = Number(before);
  if (before === "" || !(last > 0)) return [];
  const share = value / last - 1;
  if (Math.abs(share) <= PRICE_APART) return [];
  const side = share > 0 ? "above" : "below";
  return [
    `${numberText(value)} a kg is ${Math.round(Math.abs(share) * 100)} % ${side} the ${numberText(last)} of the plan`,
  ];
}

function price(context: RowContext, read: ReadonlyMap<string, Read>): Draft[] {
  const found = read.get("Price");
  if (found === undefined) return [];
  const unit = found.per ?? String(read.get("Price for")?.value ?? "kg");
  const made = draft(context, "Price", found.given, "", `${context.plan.currency} a kg`.trim());
  try {
    const { value, doubt } = pricePerKilogram(Number(found.value), unit, unitsOf(context));
    const target = targetOf(context);
    const changes = changeOf(target, found.field.goesTo ?? "", value);
    const [before = ""] = changes.map((change) => change.before);
    const days = context.day === undefined ? [] : changeOf(target, "Price of", context.day, true);
    made.doubts.push(
      ...[found.doubt, doubt].filter((words) => words !== undefined),
      ...againstLast(Number(value), before),
    );
    const isZero = Number(value) === 0 ? ["a price of 0"] : [];
    made.doubts.push(...isZero);
    const isHeld = isHeldBy(target, found.field.goesTo, [...changes, ...days]);
    return [{ ...made, readAs: String(value), changes: [...changes, ...days], isHeld }];
  } catch (problem) {
    return [{ ...made, refusal: sentenceOf(problem) }];
  }
}

/** What CERTIFICATE says of the row's contents: a status by element, and the verdict. */
function certificate({ line }: RowContext, contents: readonly Read[]) {
  const fn = functionNamed("CERTIFICATE");
  if (fn === undefined || contents.length === 0) return { status: new Map<string, string>(), verdict: "" };
  const elements = contents.map(({ field }) => [elementOf(field.heading) ?? ""]);
  const answer = evaluate(fn, [
    String(line.told.Grade ?? ""),
    elements,
    contents.map(({ value }) => [value]),
  ]);
  const status = new Map(answer.map((row) => [String(row[0]), String(row[4] ?? "")]));
  const last = answer.at(-1)?.[4] ?? answer[0]?.[0];
  return { status, verdict: last instanceof Error ? last.message : String(last ?? "") };
}

function analysis(context: RowContext, read: ReadonlyMap<string, Read>): Draft[] {
  const contents = [...read.values()].filter(({ field }) => field.kind === "mass %");
  const { status, verdict } = certificate(context, contents);
  return contents.map((one) => {
    const made = simple(context, one);
    const word = status.get(elementOf(one.field.heading) ?? "");
    if (word === "HIGH" || word === "LOW" || word === undefined)
      made.doubts.push(`${word ?? "not judged"} against ${context.line.told.Grade}: ${verdict}`);
    return made;
  });
}

/** Answers of steel and of heat treatment: each goes its own way, price and analysis are held against the plan. */
function byColumn(context: RowContext, read: ReadonlyMap<string, Read>): Draft[] {
  const apart = new Set(["Price", "Price for"]);
  const rest = [...read.values()].filter(({ field }) => !apart.has(field.heading) && field.kind !== "mass %");
  return [...price(context, read), ...rest.map((one) => simple(context, one)), ...analysis(context, read)];
}

function toQuote(context: RowContext, read: ReadonlyMap<string, Read>): Draft[] {
  const answer = read.get("Answer");
  const remarks = read.get("Remarks");
  const others = remarks === undefined ? [] : [simple(context, remarks)];
  if (answer === undefined) return others;
  const quoted = Number(context.line.told.Pieces ?? 0);
  const wanted = read.get("Pieces wanted");
  const pieces =
    { accepted: quoted, refused: 0, changed: Number(wanted?.value ?? quoted) }[String(answer.value)] ??
    quoted;
  const given = wanted === undefined ? answer.given : `${answer.given}, ${wanted.given}`;
  const made = draft(context, "Answer", given, `${answer.value}: ${pieces}`, "pieces");
  const target = targetOf(context);
  made.changes = changeOf(target, answer.field.goesTo ?? "", pieces);
  made.isHeld = isHeldBy(target, answer.field.goesTo, made.changes);
  if (answer.value !== "accepted")
    made.doubts.push(`the line is ${answer.value}: ${pieces} in place of ${quoted} pieces`);
  if (answer.value === "accepted" && wanted !== undefined && wanted.value !== quoted)
    made.doubts.push(`accepted, but ${wanted.given} pieces wanted in place of ${quoted}`);
  return [made, ...others];
}

/** How the answers of a form become drafts, by the mark of the form. */
export type RowShapes = Readonly<Record<string, typeof byColumn>>;

/**
 * The answers of one row as drafts of proposals, with what there is to doubt in each.
 *
 * @param shapes - Of forms whose answers find rows of their own; the others go into the row of their line.
 */
export function answersOfRow(context: RowContext, shapes: RowShapes): Draft[] {
  const { read, refused } = readRow(context);
  const shape = { Q: toQuote, ...shapes }[context.table.form.mark] ?? byColumn;
  const made = shape(context, read);
  const doubts = [...drift(context), ...halfFilled(context, read)];
  return [...refused, ...made.map((one) => ({ ...one, doubts: [...one.doubts, ...doubts] }))];
}

export { againstLast, changeOf, draft, isHeldBy, type Read, rowWith, simple, type Target, unitsOf };
