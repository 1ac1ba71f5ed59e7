import {
  type LiveFormula,
  type LiveWorkbook,
  readLiveWorkbook,
  withChangesRead,
} from "../read/live-workbook";
import { type Calculation, calculateFile } from "./calculation";
import { writePrintAreas } from "./print-areas";
import { writeResults } from "./write-results";

/** What the formulas of a workbook file come to, and the file with these results and print areas written into it. */
export interface CalculatedFile {
  readonly done: Calculation;
  readonly current: LiveWorkbook;
}

/** A calculation, and the workbook that it was made of. */
export interface Made {
  readonly live: LiveWorkbook;
  readonly done: Calculation;
}

/** A file that was calculated lately. */
interface Lately {
  readonly bytes: Uint8Array;
  readonly file: WorkbookFile;
  readonly at: number;
}

/** So long a file is known by what it holds, in milliseconds: TODAY and NOW move on. */
const LATELY = 60_000;

const areEqual = (one: Uint8Array, other: Uint8Array) =>
  one.length === other.length && one.every((byte, at) => byte === other[at]);

/** The calculation of a workbook as that of a file into which nothing but its results was written since. */
function ofSameFormulas({ live: before, done }: Made, live: LiveWorkbook): Calculation {
  const earlier = new Map<LiveFormula, LiveFormula>();
  const later = new Map<LiveFormula, LiveFormula>();
  live.sheets.forEach(({ formulas }, at) => {
    for (const [place, formula] of formulas) {
      const same = before.sheets[at]?.formulas.get(place);
      if (same === undefined) throw new RangeError(`no formula stood in ${formula.sheet} at ${place}`);
      earlier.set(formula, same);
      later.set(same, formula);
    }
  });
  const was = (formula: LiveFormula) => earlier.get(formula) ?? formula;
  const is = (formula: LiveFormula) => later.get(formula) ?? formula;
  return {
    resultAt: (formula, row, column) => done.resultAt(was(formula), row, column),
    areaOf: (formula) => done.areaOf(was(formula)),
    left: new Map([...done.left].map(([formula, reason]) => [is(formula), reason])),
    first: new Set([...done.first].map(is)),
    handedOver: (formula) => done.handedOver(was(formula)),
    printedRows: done.printedRows,
    names: done.names,
  };
}

/** A workbook file, read once, and calculated once where somebody asks for it. Nobody writes into it. */
export class WorkbookFile {
  private read: LiveWorkbook | undefined;
  private made: Promise<CalculatedFile> | undefined;

  private constructor(
    private readonly bytes: Uint8Array,
    /** Of the same formulas, where these bytes hold their results already. */
    private readonly results?: Made,
  ) {}

  /** Files by their bytes, as long as somebody holds these. */
  private static readonly known = new WeakMap<Uint8Array, WorkbookFile>();
  /** The file that was calculated last: mostly it is the next that is asked for, read from the disk once more. */
  private static last: Lately | undefined;

  /**
   * The file of these bytes, which stay as they are. Copies for several people are made of one file, and answers are
   * held against it: it is read and calculated for all of them together.
   *
   * @throws FileRefusal for a file that cannot be read.
   */
  static of(bytes: Uint8Array): WorkbookFile {
    const file = WorkbookFile.known.get(bytes) ?? WorkbookFile.lately(bytes) ?? new WorkbookFile(bytes);
    file.live;
    WorkbookFile.known.set(bytes, file);
    return file;
  }

  /** Notes that a calculation was written into a file, so that whoever asks for that file next need not make it. */
  static holdsResultsOf(live: LiveWorkbook, done: Calculation, bytes: Uint8Array): void {
    WorkbookFile.note(bytes, new WorkbookFile(bytes, { live, done }));
  }

  /** The calculation whose results these bytes hold, where they were written just now. */
  static resultsIn(bytes: Uint8Array): Made | undefined {
    return WorkbookFile.lately(bytes)?.results;
  }

  private static note(bytes: Uint8Array, file: WorkbookFile): void {
    WorkbookFile.last = { bytes, file, at: Date.now() };
  }

  private static lately(bytes: Uint8Array): WorkbookFile | undefined {
    const last = WorkbookFile.last;
    if (last === undefined || Date.now() - last.at > LATELY) return undefined;
    return areEqual(last.bytes, bytes) ? last.file : undefined;
  }

  get live(): LiveWorkbook {
    this.read ??= readLiveWorkbook(this.bytes);
    return this.read;
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
    const { live, results } = this;
    const done = results === undefined ? await calculateFile(live) : ofSameFormulas(results, live);
    if (results === undefined) writeResults(live, done);
    writePrintAreas(live, done);
    if (results === undefined) WorkbookFile.note(this.bytes, this);
    return { done, current: withChangesRead(live) };
  }
}
