/** Where the browser keeps that the first page has been left. */
export const STARTED_KEY = "blade-metallurgy-started";

/** True once the first page has been left; without storage the pane begins there each time. */
export function hasStarted(): boolean {
  try {
    return localStorage.getItem(STARTED_KEY) !== null;
  } catch {
    return false;
  }
}

export function markStarted(): void {
  try {
    localStorage.setItem(STARTED_KEY, "yes");
  } catch {
    // It is shown again, then.
  }
}
