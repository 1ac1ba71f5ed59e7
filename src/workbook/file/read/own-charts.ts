import { isPicture } from "../../model/table-curves";
import type { Package } from "../package/package";
import { relationshipsOf } from "../package/relationships";
import { walkXml } from "../package/xml";

/** Names of what is drawn over the cells of a sheet: pictures, charts and boxes. */
export function drawnOver(file: Package, sheet: string): string[] {
  const parts = relationshipsOf(file, sheet).flatMap(({ kind, part }) =>
    kind === "drawing" && part !== undefined && file.has(part) ? [part] : [],
  );
  return parts.flatMap((part) => {
    const names: string[] = [];
    walkXml(part, file.text(part), {
      open({ name, attributes }) {
        if (name === "cNvPr") names.push(attributes.name ?? "");
      },
    });
    return names;
  });
}

/** True where all that is drawn over a sheet are curves that cells of it ask for: they are drawn again from the cells. */
export const hasOwnChartsOnly = (file: Package, sheet: string): boolean =>
  drawnOver(file, sheet).every(isPicture);
