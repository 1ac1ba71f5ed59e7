import type { PageId, PageModule } from "./page";

interface PageEntry {
  readonly title: string;
  readonly load: () => Promise<PageModule>;
}

/** The pages in the order of a run. Each is fetched when it is first opened. */
export const PAGES: Readonly<Record<PageId, PageEntry>> = {
  cell: {
    title: "This cell",
    load: () => import(/* webpackChunkName: "this-cell" */ "./pages/cell"),
  },
  steels: {
    title: "Steels",
    load: () => import(/* webpackChunkName: "steels" */ "./pages/steels"),
  },
  bands: {
    title: "Hardness bands",
    load: () => import(/* webpackChunkName: "bands" */ "./pages/bands"),
  },
  section: {
    title: "Section",
    load: () => import(/* webpackChunkName: "section" */ "./pages/section"),
  },
  tempering: {
    title: "Hardening and tempering",
    load: () => import(/* webpackChunkName: "tempering" */ "./pages/tempering"),
  },
  shape: {
    title: "Shape",
    load: () => import(/* webpackChunkName: "shape" */ "./pages/shape"),
  },
  checks: {
    title: "Run checks",
    load: () => import(/* webpackChunkName: "checks" */ "./pages/checks"),
  },
  cautions: {
    title: "Cautions",
    load: () => import(/* webpackChunkName: "cautions" */ "./pages/cautions"),
  },
  functions: {
    title: "Functions",
    load: () => import(/* webpackChunkName: "functions-list" */ "./pages/functions"),
  },
  repair: {
    title: "Share and repair",
    load: () => import(/* webpackChunkName: "repair" */ "./pages/repair"),
  },
  about: {
    title: "About",
    load: () => import(/* webpackChunkName: "about" */ "./pages/about"),
  },
};

export function isPageId(given: string): given is PageId {
  return Object.hasOwn(PAGES, given);
}
