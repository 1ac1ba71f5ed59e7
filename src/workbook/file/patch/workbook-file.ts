import { type LiveWorkbook, readLiveWorkbook } from "../read/live-workbook";
import { type Calculation, calculateFile } from "./calculation";
import { writePrintAreas } from "./print-areas";
import { writeResults } from "./recalculate";

/** What the formulas of a workbook file come to, and the file with these results and print areas written into it. */
export interface CalculatedFile {
  readonly done: Calculation;
  readonly current: LiveWorkbook;
}

/** A workbook file, read once, and calculated once where somebody asks for it. Nobody writes into it. */
export class WorkbookFile {
  readonly live: LiveWorkbook;
  private made: Promise<CalculatedFile> | undefined;

  private constructor(bytes: Uint8Array) {
    this.live = readLiveWorkbook(bytes);
  }

  /** Files by their bytes, as long as somebody holds these. */
  private static readonly known = new WeakMap<Uint8Array, WorkbookFile>();

  /**
   * The file of these bytes, which stay as they are. Copies for several people are made of one file, and answers are
   * held against it: it is read and calculated for all of them together.
   *
   * @throws FileRefusal for a file that cannot be read.
   */
  static of(bytes: Uint8Array): WorkbookFile {
    const file = WorkbookFile.known.get(bytes) ?? new WorkbookFile(bytes);
    WorkbookFile.known.set(bytes, file);
    return file;
  }

  /** @throws FileRefusal for a file that takes more than the budget; the next who asks tries again. */
  async calculated(): Promise<CalculatedFile> {
    this.made ??= this.calculate();
    try {
      return await this.made;
    } catch (fault) {
      this.made = undefined;
      throw fault;
    }
  }

  private async calculate(): Promise<CalculatedFile> {
    const done = await calculateFile(this.live);
    writeResults(this.live, done);
    writePrintAreas(this.live, done);
    return { done, current: readLiveWorkbook(this.live.file.save()) };
  }
}
