import manifest from "../../../package.json";
import { DATA_EDITION } from "../../core/edition";
import { NAMESPACE } from "../../functions/catalogue";
import { USUAL_TIME } from "../answers/forms";
import type { CellData, SheetData } from "../model/workbook-data";

/** Name of the sheet that says where the values of a copy come from. */
export const PROVENANCE = "Provenance";

/** What computed the values: the words that VERSION gives in a cell. */
export const COMPUTED_BY = `Blade Metallurgy ${manifest.version}, data edition ${DATA_EDITION}`;

/** The labels that verification looks for. */
export const LABELS = {
  computedBy: "Computed by",
  date: "Date given by the sender",
  source: "Copied from",
  audience: "Made for",
  enquiry: "Enquiry about lines",
  number: "Number of this copy",
  by: "Answer wanted by",
  digest: "SHA-256 of this copy",
  formulas: "Formulas replaced by values",
  leftOut: "Sheets left out",
  key: "Public key of the sender",
  signature: "Signature of the SHA-256",
} as const;

type Cell = string | number;
type Line = readonly Cell[];

/** Said where an enquiry asks about every line that steel is bought for. */
export const ALL_LINES = "all";

/** What a copy asks: its number, by when, and the lines with their keys: key, sheet, cells to fill in. */
export interface Asked {
  readonly number: string;
  readonly by: string;
  readonly lines: readonly Line[];
}

/** What the sheet tells. */
export interface Origin {
  readonly date: string;
  readonly source: string;
  /** For whom the copy was made; empty where sheets were chosen by name. */
  readonly audience: string;
  /** Which lines an enquiry asks about; empty for any other copy. */
  readonly enquiry: string;
  /** What is asked in the copy; nothing where it has no cells for answers. */
  readonly asked?: Asked;
  readonly formulas: number;
  readonly leftOut: number;
  /** How many formulas a note keeps. */
  readonly noted: number;
  /** Formulas that kept the value of the file they came from: sheet, cell, reason. */
  readonly left: readonly Line[];
  /** Results that are errors: sheet, cell, sentence. */
  readonly errors: readonly Line[];
  /** Typed cells that formulas read: sheet, cell, content. */
  readonly inputs: readonly Line[];
}

function block(title: string, headings: Line, lines: readonly Line[]): Line[] {
  return lines.length === 0 ? [] : [[], [title], headings, ...lines];
}

function inputLines({ inputs, leftOut }: Origin): Line[] {
  if (inputs.length === 0 && leftOut > 0)
    return [[], ["Inputs"], ["They stand on sheets that were left out."]];
  return block("Inputs", ["Sheet", "Cell", "Typed content"], inputs);
}

function notesSentence({ formulas, noted }: Origin): string {
  if (noted === formulas) return "the note on a cell keeps the formula";
  if (noted === 0) return "the formulas stay with the sender";
  return `notes keep ${noted} of them, those of ${NAMESPACE} functions first; the others stay with the sender`;
}

/** The lines of the sheet, without the digest and what is signed by it. */
export function provenanceLines(origin: Origin, key?: string): Line[] {
  return [
    [PROVENANCE],
    [`Every formula of this copy was replaced by its value; ${notesSentence(origin)}.`],
    ["Estimates carry a range and an error: ask the sender before heat-treating by them."],
    ["Follow local codes and licensed practice."],
    [],
    [LABELS.computedBy, COMPUTED_BY],
    [LABELS.date, origin.date === "" ? "not given" : origin.date],
    [LABELS.source, origin.source === "" ? "not given" : origin.source],
    [LABELS.audience, origin.audience === "" ? "sheets chosen by name" : origin.audience],
    ...(origin.enquiry === "" ? [] : [[LABELS.enquiry, origin.enquiry]]),
    ...(origin.asked === undefined
      ? []
      : [
          [LABELS.number, origin.asked.number],
          [LABELS.by, origin.asked.by === "" ? USUAL_TIME : origin.asked.by],
        ]),
    [LABELS.formulas, origin.formulas],
    [LABELS.leftOut, origin.leftOut],
    [LABELS.key, key ?? "none: the copy is not signed"],
    ...block("Not computed by us, value as it stood", ["Sheet", "Cell", "Reason"], origin.left),
    ...block("Errors", ["Sheet", "Cell", "What it says"], origin.errors),
    ...inputLines(origin),
    ...block(
      "Lines asked about",
      ["Key of the line", "Sheet", "Cells to fill in"],
      origin.asked?.lines ?? [],
    ),
  ];
}

const WIDTHS = [216, 174, 496] as const;

/** The sheet as data. @param seal - Digest and signature: lines that the digest cannot cover. */
export function provenanceSheet(lines: readonly Line[], seal: readonly Line[]): SheetData {
  const cells = [...lines, [], ...seal].flatMap((line, row) =>
    line.flatMap((value, column): CellData[] => (value === "" ? [] : [{ row, column, content: { value } }])),
  );
  return {
    name: PROVENANCE,
    isHidden: false,
    cells,
    columns: new Map(WIDTHS.map((size, column) => [column, { size }])),
    rows: new Map(),
    frozenRows: 0,
    frozenColumns: 0,
    merged: [],
    offers: [],
    colors: [],
    print: { landscape: false },
  };
}
