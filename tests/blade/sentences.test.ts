import { expect, test } from "vitest";
import { USES } from "../../src/core/blade/bands";
import { steelsFor } from "../../src/core/blade/choice";
import { isNamedFor } from "../../src/core/blade/named-steels";
import { QUENCH_MEDIA } from "../../src/core/hardening/quench-media";
import { ASSESS, BAND_TEMPER } from "../../src/functions/blade";
import { RECIPE, TREATMENT } from "../../src/functions/run";
import { TEMPER_PLAN } from "../../src/functions/tempering";
import { plan } from "../run/run";
import { answer } from "../steel/answer";

const words = (text: string) => text.split(/\s+/).filter((word) => word !== "").length;

/** Sentences of a cell: a full stop before a space ends one, the point of a figure does not. */
const sentences = (text: string) => text.split(/(?<=[.!?])\s+/);

/** The sentences of a row that are longer than a cell may hold. */
const tooLong = (cells: readonly unknown[]) =>
  cells
    .filter((cell) => typeof cell === "string")
    .flatMap(sentences)
    .filter((sentence) => words(sentence) > 40);

/** The trade's own steels of every use, five a use at most. */
const PAIRS = USES.flatMap((use) =>
  steelsFor({ use })
    .filter(({ steel }) => isNamedFor(use, steel))
    .slice(0, 5)
    .map(({ steel }) => ({ use, steel: steel.name })),
);

test("no sentence over 40 words, over every use, the trade's steels of it and every quench", () => {
  const found = new Map<string, string>();
  let cells = 0;
  const look = (from: string, rows: readonly (readonly unknown[])[]) => {
    for (const row of rows) {
      cells += row.length;
      for (const sentence of tooLong(row)) found.set(`${from}: ${sentence}`, sentence);
    }
  };
  for (const { use, steel } of PAIRS) {
    const { word, aim } = use;
    look("TEMPER_PLAN", answer(TEMPER_PLAN, steel, aim));
    for (const { word: quench } of QUENCH_MEDIA) {
      look("ASSESS", answer(ASSESS, word, steel, aim, null, 800, quench, null, 6));
      look("BAND_TEMPER", answer(BAND_TEMPER, word, steel, 800, 6, quench));
      look("RECIPE", answer(RECIPE, steel, aim, quench));
      look("TREATMENT", answer(TREATMENT, steel, word, aim, quench, 20, 800));
    }
    const line = {
      use: word,
      steel,
      good: 1,
      yield: 0.9,
      length: 800,
      width: 40,
      thickness: 6,
      "target HRC": aim,
    };
    const lines = QUENCH_MEDIA.map(({ word: quench }, at) => ({ line: `${at}`, quench, ...line }));
    look(
      "RUN_PLAN",
      plan(lines).map((row) => Object.values(row)),
    );
  }
  console.info(
    `${PAIRS.length} pairs in ${QUENCH_MEDIA.length} quenches, ${cells} cells: ${found.size} sentences too long`,
  );
  expect(PAIRS.length).toBeGreaterThan(60);
  expect([...found.keys()].slice(0, 20)).toEqual([]);
}, 300_000);
