import type { HostPort } from "../host/port";

/** What pages share while the pane is open. */
export interface PaneState {
  /** The steel last looked at, as the smith typed it. */
  steel: string;
  /** The function last looked at. */
  functionName: string;
}

export interface PageContext {
  readonly port: HostPort;
  readonly state: PaneState;
  /** Shows another page. */
  readonly open: (page: PageId) => void;
}

/** Fills an empty element with a page; returns what to undo when it is left, if anything. */
export type RenderPage = (root: HTMLElement, context: PageContext) => (() => void) | undefined;

export interface PageModule {
  readonly render: RenderPage;
}

export type PageId = "steels" | "bands" | "tempering" | "cautions" | "functions" | "about";

interface PageEntry {
  readonly title: string;
  readonly load: () => Promise<PageModule>;
}

/** The pages in the order of a run. Each is fetched when it is first opened. */
export const PAGES: Readonly<Record<PageId, PageEntry>> = {
  steels: {
    title: "Steels",
    load: () => import(/* webpackChunkName: "steels" */ "./pages/steels"),
  },
  bands: {
    title: "Hardness bands",
    load: () => import(/* webpackChunkName: "bands" */ "./pages/bands"),
  },
  tempering: {
    title: "Hardening and tempering",
    load: () => import(/* webpackChunkName: "tempering" */ "./pages/tempering"),
  },
  cautions: {
    title: "Cautions",
    load: () => import(/* webpackChunkName: "cautions" */ "./pages/cautions"),
  },
  functions: {
    title: "Functions",
    load: () => import(/* webpackChunkName: "functions-list" */ "./pages/functions"),
  },
  about: {
    title: "About",
    load: () => import(/* webpackChunkName: "about" */ "./pages/about"),
  },
};

export function isPageId(given: string): given is PageId {
  return Object.hasOwn(PAGES, given);
}
