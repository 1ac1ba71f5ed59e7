import { relationshipsOf } from "../package/relationships";
import type { LiveWorkbook } from "./live-workbook";
import { readStyles, type Styles } from "./read-styles";
import { coloursOf } from "./theme-colors";

/** The styles of all cells of a workbook file, by the number that a cell gives. */
export function readStylesOf({ file, main }: LiveWorkbook): Styles {
  const links = relationshipsOf(file, main.name);
  const partOf = (wanted: string) => links.find(({ kind }) => kind === wanted)?.part;
  return readStyles(file, partOf("styles"), coloursOf(file, partOf("theme")));
}
