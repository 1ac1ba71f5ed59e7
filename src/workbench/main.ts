import { mountPane } from "../taskpane/pane";
import { mountCellStrip } from "./cell-strip";
import { mountFiles } from "./files";
import { gridPort } from "./grid-port";
import { loadGrid } from "./load-grid";
import { byId } from "./page";
import { mountTableView } from "./table-view";
import { mountPaneToggle, mountTools } from "./tools";
import "./workbench.css";

async function start(): Promise<void> {
  const port = gridPort();
  mountPaneToggle();
  mountPane(byId("pane", HTMLElement), port);
  const grid = await loadGrid(byId("grid", HTMLElement));
  port.connect(grid);
  mountTools(grid);
  const { say } = mountCellStrip(grid);
  mountFiles(grid, say);
  mountTableView(grid);
}

start().catch((fault) => {
  byId("cell-result", HTMLElement).textContent = fault instanceof Error ? fault.message : String(fault);
});
