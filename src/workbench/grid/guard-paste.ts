import type { Injector } from "@univerjs/core";
import { ISheetClipboardService } from "@univerjs/preset-sheets-core";

/** What the service does within; as published every paste brings the look, the lists and the rules of where it is from. */
interface Pasting {
  _pasteExternal(html: string, kind: string): Promise<boolean>;
  _pasteInternal(copyId: string, kind: string): Promise<boolean>;
}

const USUAL = "default-paste";
const VALUES = "special-paste-value";
const FORMULAS = "special-paste-formula";

/**
 * Cells keep their look, their lists and their number format when something is pasted into them: from elsewhere come
 * values, from a cell of this workbook its value or its formula. What was cut moves as a whole.
 */
export function guardPaste(injector: Injector): void {
  const service = injector.get(ISheetClipboardService);
  const pasting = service as unknown as Pasting;
  const external = pasting._pasteExternal.bind(service);
  const internal = pasting._pasteInternal.bind(service);
  const cache = service.copyContentCache();
  pasting._pasteExternal = (html, kind) => external(html, kind === USUAL ? VALUES : kind);
  pasting._pasteInternal = (copyId, kind) => {
    const isCut = cache.get(copyId)?.copyType === "CUT";
    return internal(copyId, kind === USUAL && !isCut ? FORMULAS : kind);
  };
}
