import type { HostPort } from "../host/port";
import type { PaneFiles } from "./pane-files";

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
  /** `undefined` where the pane itself makes no workbooks. */
  readonly files: PaneFiles | undefined;
  /** Shows another page. */
  readonly open: (page: PageId) => void;
}

/** Fills an empty element with a page; returns what to undo when it is left, if anything. */
export type RenderPage = (root: HTMLElement, context: PageContext) => (() => void) | undefined;

export interface PageModule {
  readonly render: RenderPage;
}

export type PageId =
  | "cell"
  | "choice"
  | "steels"
  | "bands"
  | "section"
  | "tempering"
  | "shape"
  | "checks"
  | "cautions"
  | "functions"
  | "repair"
  | "about";
