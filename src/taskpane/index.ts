import { associateCommands, type Command } from "../host/commands";
import { type Connection, connect, excelPort } from "../host/excel";
import { noSheet } from "../host/no-sheet";
import { excelFiles } from "./excel-files";
import type { PageId } from "./page";
import { type MountedPane, mountPane } from "./pane";
import "./excel-page.css";

/** Long enough for a slow network to bring office.js' own files, short enough not to look dead. */
const PATIENCE = 4000;

const NOTICES = {
  outside:
    "This page is open outside Excel. Steels, bands, tempering and help all work here; to put formulas into a sheet, open it from the Home tab in Excel.",
  missing:
    "Excel’s own script (office.js) could not be loaded, so this pane cannot reach the sheet and BLADE formulas may show #NAME?. Check that your network lets appsforoffice.microsoft.com through, then reload. The figures below still work.",
  waiting: "Waiting for Excel. The figures below already work.",
} as const;

function show(
  root: HTMLElement,
  connection: Connection | { readonly kind: "waiting" },
  start: string,
): MountedPane {
  if (connection.kind === "excel") return mountPane(root, connection.port, { start, files: excelFiles });
  return mountPane(root, noSheet, { start, notice: NOTICES[connection.kind] });
}

/** What a button of the ribbon shows: a page, or a part of it. */
const SHOWN = {
  thisCell: ["cell", ""],
  insertFunction: ["insert", ""],
  shareCopy: ["repair", "share"],
  newPlan: ["repair", "plan"],
  recalculate: ["health", ""],
} as const satisfies Record<Command, readonly [PageId, string]>;

function showWanted(pane: MountedPane, command: Command): void {
  const [page, part] = SHOWN[command];
  pane.open(page, part);
}

async function run(command: Command, pane: Promise<MountedPane>): Promise<void> {
  if (command !== "recalculate") return showWanted(await pane, command);
  try {
    await excelPort.recalculate();
  } catch {
    // Nothing can be said beside a button of the ribbon: the page says it when its own is pressed.
    await Office.addin.showAsTaskpane();
    showWanted(await pane, command);
  }
}

async function begin(root: HTMLElement): Promise<MountedPane> {
  const connected = connect();
  const waited = new Promise<{ kind: "waiting" }>((done) => setTimeout(done, PATIENCE, { kind: "waiting" }));
  const first = await Promise.race([connected, waited]);
  const mounted = show(root, first, decodeURIComponent(location.hash.slice(1)));
  if (first.kind !== "waiting") return mounted;
  const connection = await connected;
  const start = mounted.shown();
  mounted.unmount();
  return show(root, connection, start);
}

const root = document.getElementById("pane");
if (root !== null) {
  const pane = begin(root);
  associateCommands((command) => run(command, pane));
}
