import type { Package } from "../file/package/package";

/** The first unused name of the form `stem`, a number, `ending`. */
export function freeName(file: Package, stem: string, ending: string): string {
  let number = 1;
  while (file.has(`${stem}${number}${ending}`)) number += 1;
  return `${stem}${number}${ending}`;
}
