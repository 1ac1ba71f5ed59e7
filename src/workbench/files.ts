import type { Grid } from "./grid";
import { byId } from "./page";

function saveToFile(grid: Grid): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([grid.save()], { type: "application/json" }));
  link.download = "run.json";
  link.click();
  URL.revokeObjectURL(link.href);
}

type Say = (sentence: string) => void;

async function openFile(grid: Grid, file: File, say: Say): Promise<void> {
  try {
    grid.open(await file.text());
  } catch (fault) {
    say(fault instanceof Error ? fault.message : String(fault));
  }
}

/** Saving to and opening from a file; nothing is kept anywhere else, so leaving with changes asks first. */
export function mountFiles(grid: Grid, say: Say): void {
  const chosen = byId("file", HTMLInputElement);
  byId("save", HTMLButtonElement).addEventListener("click", () => saveToFile(grid));
  byId("open", HTMLButtonElement).addEventListener("click", () => chosen.click());
  chosen.addEventListener("change", () => {
    const [file] = chosen.files ?? [];
    if (file !== undefined) void openFile(grid, file, say);
    chosen.value = "";
  });
  window.addEventListener("beforeunload", (leaving) => {
    if (grid.hasChanges()) leaving.preventDefault();
  });
}
