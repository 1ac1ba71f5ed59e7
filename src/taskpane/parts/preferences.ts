/** How a reader wants figures shown. Formulas, sheets and typed figures are never touched by it. */
export interface Preferences {
  readonly temperature: "°C" | "°F";
  readonly length: "mm" | "in";
}

/** Where the browser keeps them; the about page names it. */
export const PREFERENCES_KEY = "blade-metallurgy-pane";

const SHOP: Preferences = { temperature: "°C", length: "mm" };

/** Storage may be absent, full or forbidden: the pane then starts with the shop's units each time. */
function stored(): unknown {
  try {
    return JSON.parse(localStorage.getItem(PREFERENCES_KEY) ?? "null");
  } catch {
    return null;
  }
}

function keep(preferences: Preferences): void {
  try {
    localStorage.setItem(PREFERENCES_KEY, JSON.stringify(preferences));
  } catch {
    // Kept until the pane closes, then.
  }
}

/** Preferences out of anything that was stored; what is not one of the choices counts as not chosen. */
export function readPreferences(found: unknown): Preferences {
  const { temperature, length } = Object(found) as Readonly<Record<string, unknown>>;
  return {
    temperature: temperature === "°F" ? "°F" : SHOP.temperature,
    length: length === "in" ? "in" : SHOP.length,
  };
}

let current = readPreferences(stored());

/** What the reader chose last, in this browser. */
export function preferences(): Preferences {
  return current;
}

/** Takes a choice up and keeps it for the next time. */
export function prefer(changed: Partial<Preferences>): void {
  current = { ...current, ...changed };
  keep(current);
}
