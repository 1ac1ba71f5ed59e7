import manifest from "../../package.json";
import { knows, knowsSet, writing } from "./excel-run";

/** Newest set of a name that this Excel knows, as `1.16`. */
function newest(name: string, upTo: number): string {
  for (let minor = upTo; minor > 0; minor -= 1) {
    if (knowsSet(name, `1.${minor}`)) return `1.${minor}`;
  }
  return "none";
}

/** The version of the files that the host of the pages has now; empty where it does not tell. */
async function hosted(): Promise<string> {
  try {
    const response = await fetch("files.json", { cache: "no-store" });
    const list = response.ok ? ((await response.json()) as { version?: unknown }) : {};
    return String(list.version ?? "");
  } catch {
    return "";
  }
}

function hostedText(there: string): string {
  if (there === "") return "not told: the host of the pages does not answer";
  return there === manifest.version ? there : `${there}: close every workbook and open Excel again to get it`;
}

/** What this Excel is and knows, by the documented sets of its interface. */
export async function health(): Promise<readonly (readonly [string, string])[]> {
  const { diagnostics } = Office.context;
  return [
    [
      "Excel",
      `${diagnostics?.version ?? "version not told"}, ${diagnostics?.platform ?? "platform not told"}`,
    ],
    ["Version on the host of the pages", hostedText(await hosted())],
    ["Custom functions (CustomFunctionsRuntime)", newest("CustomFunctionsRuntime", 6)],
    ["One runtime for pane and functions (SharedRuntime)", newest("SharedRuntime", 2)],
    ["Interface of the sheet (ExcelApi)", newest("ExcelApi", 20)],
    ["Undo of what the pane writes", knows("1.20") ? "one step" : "a step for each write, where Excel can"],
  ];
}

/** Works every formula out anew, as Ctrl+Alt+F9 does. */
export async function recalculate(): Promise<void> {
  const task = () =>
    Excel.run(async (context) => {
      context.workbook.application.calculate("Full");
      await context.sync();
    });
  await writing("the order to work out anew", task);
}
