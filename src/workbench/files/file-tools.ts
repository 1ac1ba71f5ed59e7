import { sentenceOf } from "../../core/refusal";
import type { Autosave } from "../kept/autosave";
import type { KeptRun } from "../kept/kept-store";
import { askForAnswers } from "../page/answers-dialog";
import type { Notice } from "../page/notice";
import { byId } from "../page/page";
import { askForWhom } from "../page/share-dialog";
import type { MadeFile, OpenRun } from "./open-run";

const XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
const BUTTONS = ["new-run", "open", "save", "share", "answers", "print", "bring-back"] as const;

function handOut({ name, bytes }: MadeFile): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([new Uint8Array(bytes)], { type: XLSX }));
  link.download = name;
  link.click();
  URL.revokeObjectURL(link.href);
}

/** Lets the page show what is being done before the work begins. */
const painted = () => new Promise<void>((resolve) => setTimeout(resolve, 30));

/** Day on this machine's calendar, in the order of ISO 8601. */
function today(): string {
  const now = new Date();
  const digits = (value: number) => String(value).padStart(2, "0");
  return `${now.getFullYear()}-${digits(now.getMonth() + 1)}-${digits(now.getDate())}`;
}

/** What the tools for files work with. */
export interface Files {
  readonly run: OpenRun;
  readonly notice: Notice;
  /** `undefined` where the browser keeps nothing, or another window keeps. */
  readonly autosave: Autosave | undefined;
  /** Reads what was set aside last. */
  readonly earlier: () => Promise<KeptRun | undefined>;
}

/** New run, open, save, share copy, bring answers in, bring back. */
export class FileTools {
  private readonly buttons = BUTTONS.map((id) => byId(id, HTMLButtonElement));

  constructor(private readonly files: Files) {
    const chosen = byId("file", HTMLInputElement);
    this.on("new-run", () => this.newRun());
    this.on("save", () => this.save());
    this.on("share", () => this.share());
    this.on("answers", () => this.answers());
    this.on("print", () => this.print());
    this.on("bring-back", () => this.bringBack());
    byId("open", HTMLButtonElement).addEventListener("click", () => chosen.click());
    chosen.addEventListener("change", () => {
      const [file] = chosen.files ?? [];
      if (file !== undefined) void this.busy(`Opening ${file.name} …`, () => this.open(file));
      chosen.value = "";
    });
    for (const button of this.buttons) button.disabled = false;
  }

  /** Offers what was set aside. */
  offerEarlier(isThere: boolean): void {
    byId("bring-back", HTMLButtonElement).hidden = !isThere;
  }

  startAfresh(): void {
    this.setAside(this.aside());
    this.files.run.startDemo();
    this.done("Started afresh with the demo run.");
  }

  /** Makes the plan larger; the one before is set aside. */
  moreRows(): void {
    void this.busy("Working …", async () => {
      const before = this.files.run.kept();
      const { sentence, remarks } = await this.files.run.makeRoom();
      this.setAside(before);
      this.done(sentence, remarks);
    });
  }

  private on(id: (typeof BUTTONS)[number], work: () => Promise<void>): void {
    byId(id, HTMLButtonElement).addEventListener("click", () => void this.busy("Working …", work));
  }

  /** Holds the buttons while work is done, and says why where it fails. */
  private async busy(words: string, work: () => Promise<void>): Promise<void> {
    const { notice } = this.files;
    for (const button of this.buttons) button.disabled = true;
    notice.show(words);
    await painted();
    try {
      await work();
    } catch (fault) {
      notice.show(sentenceOf(fault));
    }
    for (const button of this.buttons) button.disabled = false;
  }

  /** What is about to be replaced on the screen, where it was not saved to a file. */
  private aside(): KeptRun | undefined {
    return this.files.run.hasChanges ? this.files.run.kept() : undefined;
  }

  private setAside(run: KeptRun | undefined): void {
    const { autosave } = this.files;
    if (autosave === undefined || run === undefined) return;
    autosave.setAside(run);
    this.offerEarlier(true);
  }

  private done(sentence: string, remarks: readonly string[] = []): void {
    this.files.autosave?.changed();
    this.files.notice.show(sentence, remarks);
  }

  private async newRun(): Promise<void> {
    const aside = this.aside();
    await this.files.run.startBlank();
    this.setAside(aside);
    this.done("A new run: fill in the shaded cells.");
  }

  private async open(file: File): Promise<void> {
    const bytes = new Uint8Array(await file.arrayBuffer());
    const aside = this.aside();
    const { sentence, remarks } = await this.files.run.open(bytes, file.name);
    this.setAside(aside);
    this.done(sentence, remarks);
  }

  private async save(): Promise<void> {
    const made = await this.files.run.save();
    handOut(made);
    this.done(made.report.sentence, made.report.remarks);
  }

  private async share(): Promise<void> {
    const { run, notice } = this.files;
    const question = await run.shareQuestion();
    notice.clear();
    const chosen = await askForWhom(question, today());
    if (chosen === undefined) return;
    const made = run.sharedFile(chosen.copy);
    handOut(made);
    const noted = await run.noteInRegister(chosen, made.name, today());
    this.done(`${made.report.sentence}${noted}`, made.report.remarks);
  }

  private async answers(): Promise<void> {
    const { run, notice } = this.files;
    notice.clear();
    const taken = await askForAnswers((sources) => run.answersQuestion(sources), today());
    if (taken === undefined) return;
    this.setAside(this.aside());
    const { sentence, remarks } = await run.showWithAnswers(taken);
    this.done(sentence, remarks);
  }

  /** The view of the pages is large, so it is loaded apart. */
  private async print(): Promise<void> {
    const { openPrintView } = await import(/* webpackChunkName: "print" */ "../print/print-view");
    this.files.notice.clear();
    openPrintView(this.files.run.printing(), this.files.run.activeSheet);
  }

  private async bringBack(): Promise<void> {
    const { run, autosave, earlier } = this.files;
    const kept = await earlier();
    if (kept === undefined) return;
    const present = run.kept();
    await run.bringBack(kept);
    autosave?.setAside(present);
    this.done(`Brought back ${kept.name}. Press again for what stood here before.`);
  }
}
