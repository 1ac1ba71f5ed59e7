import { calcColumn, type TableColumn } from "./table-sheet";

/** Addresses of the cells of a line. */
interface LineNames {
  at(key: "line" | "item", index: number): string;
}

/** The two columns with which every sheet begins that has a row a line: its name and what it is. */
export function lineColumns<Key extends string>(
  lines: () => LineNames,
  itemWidth: number,
): Record<"line" | "item", TableColumn<Key>> {
  const same = (key: "line" | "item") => (_: unknown, index: number) => {
    const cell = lines().at(key, index);
    return `IF(${cell}="","",${cell})`;
  };
  return {
    line: calcColumn<Key>("Line", 46, same("line")),
    item: calcColumn<Key>("Item", itemWidth, same("item"), { wrap: true }),
  };
}
