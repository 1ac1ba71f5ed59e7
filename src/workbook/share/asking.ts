import { answerSheet } from "../answers/answer-sheet";
import { copyNumber, rowKey } from "../answers/copy-number";
import { fieldsOf } from "../answers/forms";
import { hasSeveralCustomers, type Plan, planOf } from "../answers/lines-asked";
import type { LiveWorkbook } from "../file/read/live-workbook";
import { COLORS } from "../model/colors";
import type { CellData, SheetData } from "../model/workbook-data";
import type { Choice } from "./audience";
import { type ForOne, forAll, forOne } from "./for-one";
import { withAnswerBy, withItemBoxes } from "./letter-cells";
import { ALL_LINES, type Asked } from "./provenance";
import { type AskedForm, formsAsked, type Recipient, recipientNamed, recipientWords } from "./recipient";
import { digestOf, valuesOfSheets } from "./values";

/** What is wished of a copy that asks something. */
interface Wishes {
  readonly choice: Choice;
  readonly recipient?: Recipient;
  readonly by?: string;
  readonly date?: string;
}

/** The recipient whom a choice names, spelt as the plan spells it. */
function recipientOf(
  plan: Plan | undefined,
  choice: Choice,
  papers: readonly string[],
): Recipient | undefined {
  if (choice.kind !== "for") return undefined;
  const { whom, name, enquiry } = choice;
  if (name === undefined) return { word: whom };
  return recipientNamed(plan, whom, { name, ...(enquiry && { enquiry }) }, papers);
}

/** In a copy that asks, the shade of cells to fill in belongs to those of the other side alone. */
function withoutShade({ style, ...cell }: CellData): CellData {
  if (style?.fill !== COLORS.yours) return style === undefined ? cell : { ...cell, style };
  const { fill: _, ...rest } = style;
  return { ...cell, style: rest };
}

/** What a copy asks of whoever gets it: which rows of the papers travel, and the tables for the answers. */
export class Asking {
  private readonly plan: Plan | undefined;
  private readonly recipient: Recipient | undefined;
  private readonly forms: readonly AskedForm[];

  /**
   * @param current - The workbook with its results written into it.
   * @param papers - Names of the sheets that are shared.
   */
  constructor(
    current: LiveWorkbook,
    papers: readonly string[],
    private readonly wishes: Wishes,
  ) {
    this.plan = planOf(current);
    this.recipient = wishes.recipient ?? recipientOf(this.plan, wishes.choice, papers);
    this.forms =
      this.plan === undefined || this.recipient === undefined
        ? []
        : formsAsked(this.plan, this.recipient, papers);
  }

  /** For whom the copy is, in words; empty where sheets were chosen by name. */
  get audience(): string {
    return this.recipient === undefined ? "" : recipientWords(this.recipient);
  }

  /** The lines of an enquiry to one, in words; empty for any other copy. */
  get enquiry(): string {
    const lines = this.recipient?.enquiry;
    return lines === undefined ? "" : lines.length === 0 ? ALL_LINES : lines.join(", ");
  }

  /** Whether rows of the papers stay behind, so that the others move up. */
  get hasMovedRows(): boolean {
    return this.recipient?.name !== undefined;
  }

  /** The sheets with the rows that concern the recipient. */
  ownSheets(sheets: readonly SheetData[]): ForOne {
    if (this.recipient === undefined || this.plan === undefined) return forAll(sheets);
    const own = forOne(sheets, this.recipient, this.forms, hasSeveralCustomers(this.plan));
    const papers = new Set(this.forms.map(({ form }) => form.paper));
    const { by = "" } = this.wishes;
    return {
      ...own,
      sheets: own.sheets.map((sheet) =>
        papers.has(sheet.name) ? withItemBoxes(withAnswerBy(sheet, by)) : sheet,
      ),
    };
  }

  /** The sheets with the tables for the answers, all locked but for the cells that are asked. */
  async withTables(
    sheets: readonly SheetData[],
  ): Promise<{ readonly sheets: readonly SheetData[]; readonly asked?: Asked }> {
    const { plan, forms } = this;
    const { by = "" } = this.wishes;
    if (plan === undefined || forms.length === 0) return { sheets };
    const number = await this.number(plan, sheets);
    const lines = forms.flatMap(({ form, lines: own }) =>
      own.map(({ line }) => [
        rowKey(form.mark, number, line),
        form.name,
        fieldsOf(form, plan.elements).length,
      ]),
    );
    const whom = this.recipient?.name ?? "";
    const tables = forms.map(({ form, lines: own }) => answerSheet(form, own, { plan, number, by, whom }));
    const locked = sheets.map((sheet) => ({
      ...sheet,
      isProtected: true,
      cells: sheet.cells.map(withoutShade),
    }));
    return { sheets: [...locked, ...tables], asked: { number, by, lines } };
  }

  private async number(plan: Plan, sheets: readonly SheetData[]): Promise<string> {
    const { by = "", date = "" } = this.wishes;
    const digest = await digestOf(valuesOfSheets(sheets));
    const lines = this.forms.map(({ form, lines: own }) => [
      form.mark,
      own.map(({ line, told }) => [line, told]),
    ]);
    return copyNumber(plan.name, JSON.stringify([this.audience, by, date, digest, lines]));
  }
}
