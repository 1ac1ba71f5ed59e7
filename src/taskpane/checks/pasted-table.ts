/** Between cells: sheets paste tabs; files hold semicolons where the comma is the decimal sign, else commas. */
function separatorOf(text: string): string {
  const [first = ""] = text.split("\n", 1);
  return ["\t", ";"].find((sign) => first.includes(sign)) ?? ",";
}

const quotedOr = (separator: string) => new RegExp(`"((?:[^"]|"")*)"|([^${separator}\\n]*)`, "y");

/**
 * Rows of a table pasted from a sheet or a CSV file, as texts; a cell in quotes may hold line breaks.
 */
export function pastedRows(pasted: string): string[][] {
  const text = pasted.replace(/\r\n?/g, "\n").replace(/^\n+|\s+$/g, "");
  if (text === "") return [];
  const separator = separatorOf(text);
  const cell = quotedOr(separator);
  const rows: string[][] = [[]];
  while (cell.lastIndex <= text.length) {
    const [, quoted, plain = ""] = cell.exec(text) ?? [];
    rows.at(-1)?.push(quoted === undefined ? plain.trim() : quoted.replaceAll('""', '"'));
    const sign = text[cell.lastIndex];
    if (sign === undefined) break;
    if (sign === "\n") rows.push([]);
    cell.lastIndex += 1;
  }
  return rows;
}
