import type { StartedRun } from "../files/start-run";
import type { KeptRun } from "../kept/kept-store";

function element<K extends "script" | "link">(tag: K, attributes: Record<string, string>): Promise<void> {
  return new Promise((resolve, reject) => {
    const made = document.createElement(tag);
    for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, value);
    made.addEventListener("load", () => resolve());
    made.addEventListener("error", () => reject(new Error("The grid did not load. Reload the page.")));
    document.head.append(made);
  });
}

/** Loads the grid after everything else: it is forty times the size of the rest of the page. */
export async function loadGrid(container: HTMLElement, kept: KeptRun | undefined): Promise<StartedRun> {
  await Promise.all([
    element("script", { src: "grid-vendor.js" }),
    element("link", { rel: "stylesheet", href: "grid-vendor.css" }),
  ]);
  const { startRun } = await import(/* webpackChunkName: "grid" */ "../files/start-run");
  return startRun(container, kept);
}
