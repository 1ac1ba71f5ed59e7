import type { PageId, PageModule } from "./page";

interface PageEntry {
  readonly title: string;
  readonly load: () => Promise<PageModule>;
}

/** The pages in the order of a run. Each is fetched when it is first opened. */
export const PAGES: Readonly<Record<PageId, PageEntry>> = {
  start: {
    title: "Start",
    load: () => import(/* webpackChunkName: "start" */ "./start/page"),
  },
  cell: {
    title: "This cell",
    load: () => import(/* webpackChunkName: "this-cell" */ "./cell/page"),
  },
  insert: {
    title: "Insert a function",
    load: () => import(/* webpackChunkName: "argument-form" */ "./insert/page"),
  },
  choice: {
    title: "Which steel",
    load: () => import(/* webpackChunkName: "choice" */ "./choice/page"),
  },
  steels: {
    title: "Steels",
    load: () => import(/* webpackChunkName: "steels" */ "./steels/page"),
  },
  bands: {
    title: "Hardness bands",
    load: () => import(/* webpackChunkName: "bands" */ "./bands/page"),
  },
  section: {
    title: "Section",
    load: () => import(/* webpackChunkName: "section" */ "./section/page"),
  },
  tempering: {
    title: "Hardening and tempering",
    load: () => import(/* webpackChunkName: "tempering" */ "./tempering/page"),
  },
  shape: {
    title: "Shape",
    load: () => import(/* webpackChunkName: "shape" */ "./shape/page"),
  },
  checks: {
    title: "Run checks",
    load: () => import(/* webpackChunkName: "checks" */ "./checks/page"),
  },
  cautions: {
    title: "Cautions",
    load: () => import(/* webpackChunkName: "cautions" */ "./cautions/page"),
  },
  functions: {
    title: "Functions",
    load: () => import(/* webpackChunkName: "functions-list" */ "./functions/page"),
  },
  repair: {
    title: "Share and repair",
    load: () => import(/* webpackChunkName: "repair" */ "./repair/page"),
  },
  health: {
    title: "Health",
    load: () => import(/* webpackChunkName: "health" */ "./health/page"),
  },
  about: {
    title: "About",
    load: () => import(/* webpackChunkName: "about" */ "./about/page"),
  },
};

export function isPageId(given: string): given is PageId {
  return Object.hasOwn(PAGES, given);
}
