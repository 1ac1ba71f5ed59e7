import { InvalidValue } from "../../core/refusal";
import type { AnswerSource } from "../../workbook/answers/answer-file";
import { type AnswersQuestion, answersQuestion } from "../../workbook/answers/answers-question";
import { patchWorkbook } from "../../workbook/file/patch/patch-workbook";
import { isTextTable, readDelimited } from "../../workbook/file/read/read-delimited";
import { type ReadWorkbook, readWorkbook } from "../../workbook/file/read/read-workbook";
import { writeWorkbook } from "../../workbook/file/write/write-workbook";
import { changesBetween } from "../../workbook/model/changes";
import type { WorkbookData } from "../../workbook/model/workbook-data";
import { registered, sendingOf } from "../../workbook/share/register";
import type { ShareCopy } from "../../workbook/share/share-copy";
import { type ShareQuestion, shareQuestion } from "../../workbook/share/share-question";
import { shareReport } from "../../workbook/share/share-report";
import { dateSerial } from "../../workbook/sheets/parts/table-sheet";
import type { Grid } from "../grid/grid";
import type { KeptChanges, KeptRun } from "../kept/kept-store";
import type { ChosenCopy } from "../page/share-dialog";
import type { Printing } from "../print/print-view";
import { keptState } from "./kept-state";
import { blankData, demoData, fetchTemplateAhead, largerData } from "./new-runs";
import { workbookOfSnapshot } from "./read-snapshot";
import { snapshotOf } from "./write-snapshot";

const DEMO_NAME = "Run R-07.xlsx";
const NOBODY = { word: undefined, name: undefined };
/** Lines for which a plan that is full gets room. */
const MORE_LINES = 10;
const BLANK_NAME = "New run.xlsx";

/** What was done, in words: a sentence, and what is to be known beside it. */
export interface Report {
  readonly sentence: string;
  readonly remarks: readonly string[];
}

/** The bytes of a plan with so many answers in it. */
export interface WithAnswers {
  readonly bytes: Uint8Array;
  readonly count: number;
}

/** A file to hand out. */
export interface MadeFile {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly report: Report;
}

const counted = (count: number, word: string) => `${count} ${word}${count === 1 ? "" : "s"}`;

/** Long lists are cut: nobody reads more, and the place for them is small. */
const MAX_REMARKS = 8;

function listed(found: ReadWorkbook["left"]): string[] {
  const lines = found.map(
    ({ sheet, cell, text }) => `${sheet}!${cell} shows the value of the file: ${text}.`,
  );
  const rest = lines.length - MAX_REMARKS;
  return rest > 0 ? [...lines.slice(0, MAX_REMARKS), `and ${counted(rest, "more cell")}`] : lines;
}

/** The file as the grid takes it: what differs from this was changed by hand. */
const asOpened = (workbook: WorkbookData): WorkbookData =>
  workbookOfSnapshot(snapshotOf(workbook), () => undefined);

/** The workbook that stands in the grid, with the file it came from and whether it was saved. */
export class OpenRun {
  private name = DEMO_NAME;
  private file: Uint8Array | undefined;
  private isSaved = true;
  /** True as long as the grid holds what the file opens to. */
  private isAsOpened = false;
  /** The file that was kept with the whole. */
  private fileKept: Uint8Array | undefined;
  /** The grid's contents as the file holds them; read from the file anew after kept work was brought back. */
  private stored: WorkbookData | undefined;

  constructor(private readonly grid: Grid) {
    grid.workbook.onEdit(() => {
      this.isSaved = false;
      this.isAsOpened = false;
    });
  }

  get hasChanges(): boolean {
    return !this.isSaved;
  }

  kept(): KeptRun {
    return { ...this.place(), file: this.file, grid: this.grid.workbook.state() };
  }

  /** What belongs to kept work beside the workbook itself. */
  private place() {
    const { sheet = "", address = "A1" } = this.grid.selected() ?? {};
    const { name, isSaved } = this;
    return { savedAt: Date.now(), name, isSaved, sheet, address };
  }

  /** The workbook to be kept as a whole; what changes from now on is kept beside it. */
  keptWhole(): KeptRun {
    this.fileKept = this.file;
    this.grid.workbook.followEdits();
    return this.isAsOpened ? { ...this.place(), file: this.file, grid: undefined } : this.kept();
  }

  /** What changed since it was kept as a whole; nothing where that has to be done again. */
  keptChanges(): Omit<KeptChanges, "of"> | undefined {
    const cells = this.file === this.fileKept ? this.grid.workbook.editedCells() : undefined;
    return cells && { ...this.place(), cells };
  }

  /** Takes over what belongs to kept work that the grid shows already. */
  resume({ name, file, isSaved, sheet, address }: KeptRun): void {
    Object.assign(this, { name, file, isSaved, isAsOpened: false, stored: undefined });
    this.grid.showSheet(sheet);
    this.grid.select(address);
  }

  /** Shows kept work in the place of the present one. @throws Error where it cannot be read any more. */
  async bringBack(kept: KeptRun): Promise<void> {
    this.grid.workbook.restore(await keptState(kept));
    this.resume(kept);
  }

  /** Shows the demo run. */
  startDemo(): void {
    this.show(demoData(), DEMO_NAME, undefined);
  }

  /** Fetches what a new run needs, for the time when the network is gone. */
  fetchAhead(): void {
    fetchTemplateAhead();
  }

  /** Shows the planning template with empty lines. */
  async startBlank(): Promise<void> {
    this.show(await blankData(), BLANK_NAME, undefined);
  }

  /** Shows the plan with room for more lines. @throws InvalidValue where the workbook is no plan. */
  async makeRoom(): Promise<Report> {
    const table = this.grid.workbook.contents().tables.find(({ name }) => name === "Lines");
    if (table === undefined)
      throw new InvalidValue("Only a plan can be made larger: this workbook has no table Lines.");
    const { bytes } = await this.made();
    const lines = table.rows - 1 + MORE_LINES;
    const { name } = this;
    this.show(await largerData(bytes, lines), name, undefined);
    this.isSaved = false;
    this.grid.showSheet("Lines");
    return {
      sentence: `The plan has room for ${lines} lines now. Save it.`,
      remarks: [
        "What was typed stands in the new plan. Sheets of your own, letters and formats changed here and what was typed over worked-out cells stayed in the old one: Bring back fetches it.",
      ],
    };
  }

  /** Opens a workbook file. @throws FileRefusal with a sentence where it cannot be opened. */
  async open(bytes: Uint8Array, name: string): Promise<Report> {
    if (isTextTable(bytes, name)) return this.openText(bytes, name);
    const { workbook, unshown, left } = await readWorkbook(bytes);
    this.show(workbook, name, bytes);
    const kept = `Not shown here, but kept in the file as long as no rows, columns or sheets are added, moved or removed: ${unshown.join("; ")}.`;
    return {
      sentence: `Opened ${name}: ${counted(workbook.sheets.length, "sheet")}.`,
      remarks: [...(unshown.length === 0 ? [] : [kept]), ...listed(left)],
    };
  }

  /** Opens a text table; it is saved as a workbook. */
  private openText(bytes: Uint8Array, name: string): Report {
    const workbook = readDelimited(bytes, name);
    this.show(workbook, name.replace(/\.[^.]*$/, ".xlsx"), undefined);
    const [sheet] = workbook.sheets;
    const rows = Math.max(0, ...(sheet?.cells ?? []).map(({ row }) => row + 1));
    return { sentence: `Opened ${name}: ${counted(rows, "row")}. It is saved as ${this.name}.`, remarks: [] };
  }

  /** The workbook as a file: changes written into the one it came from, or all written anew. */
  async save(): Promise<MadeFile> {
    const made = await this.made();
    if (this.file !== undefined) Object.assign(this, { file: made.bytes, stored: undefined });
    this.isSaved = true;
    return made;
  }

  get activeSheet(): string {
    return this.grid.activeSheet();
  }

  /** The workbook as it is printed. */
  printing(): Printing {
    const shown = (sheet: string) => this.grid.shownText(sheet);
    return { workbook: this.grid.workbook.contents(), shown, file: this.name };
  }

  /** What is asked before a copy that holds values only is made of the workbook as it stands. */
  async shareQuestion(): Promise<ShareQuestion> {
    const { bytes } = await this.made();
    return shareQuestion(bytes, this.name);
  }

  /** A copy as a file to hand out. */
  sharedFile(copy: ShareCopy): MadeFile {
    const name = this.name.replace(/(\.xlsx)?$/i, " for sharing.xlsx");
    return { name, bytes: copy.bytes, report: shareReport(name, copy) };
  }

  /** Notes a copy that was handed out in the register of the plan on the screen; it is not saved yet. */
  async noteInRegister({ copy, choice }: ChosenCopy, file: string, date: string): Promise<string> {
    const whom = choice.kind === "for" ? { word: choice.whom, name: choice.name } : NOBODY;
    const { bytes } = await this.made();
    const plan = await registered(bytes, sendingOf(copy, whom, { sent: dateSerial(date), file }));
    if (plan === undefined) return "";
    const { sheet = "", address = "A1" } = this.grid.selected() ?? {};
    this.show((await readWorkbook(plan)).workbook, this.name, plan);
    this.isSaved = false;
    this.grid.showSheet(sheet);
    this.grid.select(address);
    return " Noted in the register of the plan: save the plan too.";
  }

  /** What came back to copies of the workbook as it stands. */
  async answersQuestion(sources: readonly AnswerSource[]): Promise<AnswersQuestion> {
    const { bytes } = await this.made();
    return answersQuestion(bytes, sources);
  }

  /** Shows the workbook with answers in it, under its name; it is not saved yet. */
  async showWithAnswers({ bytes, count }: WithAnswers): Promise<Report> {
    const { workbook, left } = await readWorkbook(bytes);
    this.show(workbook, this.name, bytes);
    this.isSaved = false;
    const sentence = `${counted(count, "answer")} taken into ${this.name}; the sheet Answers says which. Save it.`;
    return { sentence, remarks: listed(left) };
  }

  private show(workbook: WorkbookData, name: string, file: Uint8Array | undefined): void {
    this.grid.workbook.show(workbook);
    Object.assign(this, { name, file, isSaved: true, isAsOpened: file !== undefined, stored: undefined });
  }

  private made(): Promise<MadeFile> {
    const workbook = this.grid.workbook.contents();
    if (this.file === undefined) return this.anew(workbook, []);
    return this.grid.workbook.state().isRearranged
      ? this.rewritten(this.file, workbook)
      : this.patched(this.file, workbook);
  }

  private async anew(workbook: WorkbookData, remarks: readonly string[]): Promise<MadeFile> {
    const bytes = await writeWorkbook(workbook, { fitsRows: true });
    return { name: this.name, bytes, report: { sentence: `Saved ${this.name}.`, remarks } };
  }

  private async rewritten(file: Uint8Array, workbook: WorkbookData): Promise<MadeFile> {
    const { unshown, left } = await readWorkbook(file);
    const lost = [
      ...unshown,
      ...(left.length === 0 ? [] : [`${counted(left.length, "formula")} that could not be worked out here`]),
    ];
    const remark = `Rows, columns or sheets were added, moved or removed, so the file was written anew. Left behind in the old file: ${lost.join("; ")}.`;
    return this.anew(workbook, lost.length === 0 ? [] : [remark]);
  }

  private async patched(file: Uint8Array, workbook: WorkbookData): Promise<MadeFile> {
    this.stored ??= asOpened((await readWorkbook(file)).workbook);
    const { contents, looks, styles, isLaidOutAnew } = changesBetween(this.stored, workbook);
    const { bytes } = await patchWorkbook(file, contents, looks);
    const cells = [...contents.values()].reduce((sum, changed) => sum + changed.length, 0);
    const remarks = [
      ...(styles === 0
        ? []
        : [
            `Not written: the style of ${counted(styles, "cell")} changed here in more than bold letters and number format.`,
          ]),
      ...(isLaidOutAnew ? ["Not written: widths, merged cells and frozen heads changed here."] : []),
    ];
    const sentence = `Saved ${this.name}: ${counted(cells, "cell")} changed, everything else in the file left as it was.`;
    return { name: this.name, bytes, report: { sentence, remarks } };
  }
}
