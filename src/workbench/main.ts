import { sentenceOf } from "../core/refusal";
import { mountPane } from "../taskpane/pane";
import { FileTools } from "./files/file-tools";
import type { OpenRun } from "./files/open-run";
import type { Grid } from "./grid/grid";
import { gridPort } from "./grid/grid-port";
import { loadGrid } from "./grid/load-grid";
import { Autosave } from "./kept/autosave";
import { KeptWork } from "./kept/kept-work";
import { keepFiles } from "./kept/offline";
import { type CellStrip, mountCellStrip } from "./page/cell-strip";
import { mountEditTools } from "./page/edit-tools";
import { mountNotice, type Notice } from "./page/notice";
import { byId } from "./page/page";
import { mountRegionKeys } from "./page/regions";
import { mountTableView } from "./page/table-view";
import { mountPaneToggle, mountTools } from "./page/tools";
import "./page/workbench.css";

/** Keeps the work in the browser from now on, and tells where that cannot be done. */
function mountAutosave(grid: Grid, run: OpenRun, kept: KeptWork, notice: Notice): Autosave | undefined {
  if (kept.store === undefined) {
    window.addEventListener("beforeunload", (leaving) => {
      if (run.hasChanges) leaving.preventDefault();
    });
    if (kept.reason !== "") notice.show(kept.reason);
    return undefined;
  }
  const autosave = new Autosave(kept.store, run, (why) =>
    notice.show(`The browser no longer keeps your work by itself (${why}): save it to a file.`),
  );
  grid.workbook.onEdit(() => autosave.changed());
  grid.workbook.onTyping((draft) => autosave.typing(draft));
  return autosave;
}

/** Puts a text that was being typed when the page went back where it was. */
function resumeTyping(grid: Grid, strip: CellStrip, { draft }: KeptWork): string[] {
  if (draft === undefined) return [];
  grid.showSheet(draft.sheet);
  grid.select(draft.address);
  strip.resume(draft.text);
  return [`You were typing in ${draft.sheet}!${draft.address}: Enter takes it, Escape drops it.`];
}

async function start(): Promise<void> {
  const port = gridPort();
  mountPaneToggle();
  mountRegionKeys();
  mountPane(byId("pane", HTMLElement), port, { start: "steels" });
  const notice = mountNotice();
  const kept = await KeptWork.read();
  const { grid, run, isRestored } = await loadGrid(byId("grid", HTMLElement), kept.present);
  port.connect(grid);
  mountTools(grid);
  const autosave = mountAutosave(grid, run, kept, notice);
  const strip = mountCellStrip(grid, (draft) => autosave?.typing(draft));
  const spoiled = kept.present !== undefined && !isRestored ? await kept.setAside() : kept.failure;
  const tools = new FileTools({ run, notice, autosave, earlier: () => kept.earlier() });
  tools.offerEarlier((await kept.earlier()) !== undefined);
  mountEditTools(grid, notice, () => tools.moreRows());
  mountTableView(grid);
  const remarks = resumeTyping(grid, strip, kept);
  if (kept.present !== undefined && isRestored) {
    const again = { label: "Start afresh", pressed: () => tools.startAfresh() };
    notice.show(`Restored what you had at ${kept.time}: ${kept.present.name}.`, remarks, [again]);
  } else if (spoiled !== "") notice.show(spoiled);
  else if (remarks.length > 0) notice.show("Restored what you were typing.", remarks);
  await kept.opened();
  run.fetchAhead();
  keepFiles();
}

start().catch((fault) => {
  byId("cell-result", HTMLElement).textContent = sentenceOf(fault);
});
