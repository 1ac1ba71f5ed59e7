import { spawnSync } from "node:child_process";
import { readdirSync } from "node:fs";
import { join } from "node:path";

/** Makes a picture of each page of a PDF by pdftoppm. @returns How many pages it has. */
export function pdfPictures(folder: string, name: string): number {
  const { status } = spawnSync("pdftoppm", [
    "-png",
    "-r",
    "72",
    join(folder, `${name}.pdf`),
    join(folder, name),
  ]);
  if (status !== 0) throw new Error(`pdftoppm made no picture of ${name}`);
  return readdirSync(folder).filter((file) => new RegExp(`^${name}-\\d+\\.png$`).test(file)).length;
}
