import { functionNamed } from "../../functions/catalogue";
import { evaluate } from "../../functions/evaluate";
import type { PlanSheet } from "../sheets/plan-sheet";
import type { Plan } from "./lines-asked";
import type { Draft } from "./proposal";
import { changeOf, draft, type Read, type RowContext } from "./row-answers";

const SHEET = "Hardness readings";
const PLACES = [
  ["1st HRC", "1st"],
  ["2nd HRC", "2nd"],
  ["3rd HRC", "3rd"],
] as const;

/** Finds rows of the sheet of readings: those of a blade, else free ones, each given once. */
export class ReadingRows {
  private readonly sheet: PlanSheet | undefined;
  private readonly used = new Set<number>();

  constructor(plan: Plan) {
    this.sheet = plan.sheets.get(SHEET);
  }

  /** The row of a blade; `undefined` where it has none and no row is free. */
  private rowFor(blade: string): { readonly row: number; readonly isNew: boolean } | undefined {
    const { sheet } = this;
    if (sheet === undefined) return undefined;
    const known = sheet
      .rowsWith("Blade no.")
      .find((row) => String(sheet.under("Blade no.", row).value) === blade);
    if (known !== undefined) return { row: known, isNew: false };
    const free = sheet.tableRows.find(
      (row) => sheet.under("Blade no.", row).value === undefined && !this.used.has(row),
    );
    if (free !== undefined) this.used.add(free);
    return free === undefined ? undefined : { row: free, isNew: true };
  }

  /** The readings of one piece as a draft, held against the band of its line. */
  readonly draftsFor = (context: RowContext, read: ReadonlyMap<string, Read>): Draft[] => {
    const found = PLACES.flatMap(([heading]) => read.get(heading) ?? []);
    if (read.size === 0) return [];
    const blade = String(read.get("Piece")?.value ?? "");
    const shown = found.map(({ shown: text }) => text).join("; ");
    const made = draft(
      context,
      "Readings",
      [blade, ...found.map(({ given }) => given)].join("; "),
      shown,
      "HRC",
    );
    if (blade === "" || found.length === 0) {
      made.refusal = "readings need the number of the piece and at least one figure in HRC";
      return [made];
    }
    made.doubts.push(...this.verdict(context, found));
    const place = this.rowFor(blade);
    if (place === undefined) return [{ ...made, refusal: noRoom }];
    return [this.written(context, made, read, blade, place.row)];
  };

  private verdict({ line }: RowContext, found: readonly Read[]): string[] {
    const [low, high] = String(line.told["HRC asked"] ?? "").split(/[–-]/);
    const fn = functionNamed("READINGS");
    if (fn === undefined) return [];
    const [row = []] = evaluate(fn, [
      found.map(({ value }) => [value]),
      Number(low) || null,
      Number(high) || null,
    ]);
    const told = String(row[5] ?? "");
    return told === "inside the limits" ? [] : [told];
  }

  private written(
    context: RowContext,
    made: Draft,
    read: ReadonlyMap<string, Read>,
    blade: string,
    row: number,
  ): Draft {
    const { sheet } = this;
    if (sheet === undefined) return made;
    const target = { sheet, name: SHEET, row };
    const [batch = "", line = ""] = context.line.line.split("/");
    const cells: [string, number | string | undefined][] = [
      ["Blade no.", blade],
      ["Line", line],
      ["Batch", batch],
      ["Place on the blade", read.get("Place of test")?.value],
      ...PLACES.map(([asked, heading]): [string, number | string | undefined] => [
        heading,
        read.get(asked)?.value,
      ]),
      ["Tester", context.from === "" ? undefined : context.from],
      ["Date", context.day],
    ];
    const changes = cells.flatMap(([heading, value]) =>
      value === undefined ? [] : changeOf(target, heading, value, heading === "Date"),
    );
    const over = changes.filter(({ before }) => before !== "");
    const doubts =
      over.length === 0 ? [] : [`readings of ${blade} stand in the plan already and would be replaced`];
    const isHeld = changes.length === 0;
    return { ...made, changes, isHeld, doubts: [...made.doubts, ...doubts] };
  }
}

const noRoom = "no row of Hardness readings is free: make room with template --from, then collect again";
