import type { ShareCopy } from "./share-copy";

/** What is said of a share copy: a sentence, and what is to be known before it is sent. */
export interface ShareReport {
  readonly sentence: string;
  readonly remarks: readonly string[];
}

/** Long lists are cut: nobody reads more, and the place for them is small. */
const MAX_ERRORS = 8;

function errorLines({ errors }: ShareCopy): string[] {
  const lines = errors.map(({ sheet, cell, text }) => `${sheet}!${cell} holds ${text}`);
  const rest = lines.length - MAX_ERRORS;
  return rest > 0 ? [...lines.slice(0, MAX_ERRORS), `and ${rest} more errors`] : lines;
}

/** What goes out and what stays behind, in the order in which it is to be read before the copy is sent. */
export const shareList = ({ travels, staysBehind }: ShareCopy): string[] => [
  ...travels,
  ...(staysBehind.length === 0 ? [] : [`Stays behind: ${staysBehind.join("; ")}`]),
];

/** @param done - How the copy is at hand, without a full stop. */
export function shareReport(done: string, copy: ShareCopy): ShareReport {
  const formulas = `${copy.formulas} formula${copy.formulas === 1 ? "" : "s"}`;
  return {
    sentence: `${done}. ${formulas} replaced by values; SHA-256 ${copy.digest}.`,
    remarks: [...shareList(copy), ...errorLines(copy)],
  };
}
