import type { HostPort } from "../host/port";
import type { PaneFiles } from "./pane-files";

/** What pages share while the pane is open. */
export interface PaneState {
  /** The steel last looked at, as the smith typed it. */
  steel: string;
  /** What of the next page was asked for: a function by its name, or a section. */
  part: string;
}

export interface PageContext {
  readonly port: HostPort;
  readonly state: PaneState;
  /** `undefined` where the pane itself makes no workbooks. */
  readonly files: PaneFiles | undefined;
  /** Shows another page, or a part of it. */
  readonly open: (page: PageId, part?: string) => void;
}

/** Fills an empty element with a page; returns what to undo when it is left, if anything. */
export type RenderPage = (root: HTMLElement, context: PageContext) => (() => void) | undefined;

export interface PageModule {
  readonly render: RenderPage;
}

export type PageId =
  | "start"
  | "cell"
  | "insert"
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
  | "health"
  | "about";
