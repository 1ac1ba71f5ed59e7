import { PAGES } from "./page-list";

/** Milliseconds: where a browser does not tell when it is idle. */
const SOON = 1500;

/**
 * Fetches the other pages once the first one stands and the browser is idle, so that losing the
 * network, or the workbench's server, takes none of them away.
 */
export function fetchAhead(): void {
  const fetchAll = () => void Promise.allSettled(Object.values(PAGES).map(({ load }) => load()));
  if (typeof requestIdleCallback === "function") requestIdleCallback(fetchAll, { timeout: 3 * SOON });
  else setTimeout(fetchAll, SOON);
}
