import table from "../../../data/steel/decode-sae-series.json";
import { records, text } from "../../table";
import type { Part } from "./part";

const series = new Map(
  records(table, { series: text, contents: text, words: text }).map((row) => [row.series, row]),
);

function partsOf(contents: string, says: string): Part[] {
  const words = contents.split(" ").filter((word) => word !== "");
  const parts: Part[] = [];
  for (let at = 0; at + 1 < words.length; at += 2) {
    const [element = "", figures = ""] = [words[at], words[at + 1]];
    const [low = "", high] = figures.split("-");
    if (high === undefined) parts.push({ element, content: Number(low), says: `${says}, nominal` });
    else parts.push({ element, content: null, says: `${says}, ${low} to ${high} % over the series` });
  }
  return parts;
}

function ofKey(key: string, label: string): readonly Part[] | undefined {
  const row = series.get(key);
  if (row === undefined) return undefined;
  return partsOf(row.contents, `${label}: ${row.words}`);
}

/** What a series and its mark say: "41" and "B". Undefined where there is no such series. */
export function seriesParts(
  key: string,
  marks: readonly (string | undefined)[],
): readonly Part[] | undefined {
  const parts = ofKey(key, `series ${key.replace("x", "xxx")}`);
  if (parts === undefined) return undefined;
  return [
    ...parts,
    ...marks.flatMap((mark) => (mark === undefined ? [] : (ofKey(mark, `mark ${mark}`) ?? []))),
  ];
}
