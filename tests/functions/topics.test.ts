import { readdirSync } from "node:fs";
import { expect, test } from "vitest";
import { TOPICS } from "../../src/functions/topics";

function folders(parent: string): string[] {
  return readdirSync(parent, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => name)
    .sort();
}

const words = TOPICS.map((topic) => topic.toLowerCase()).sort();
const computed = words.filter((word) => word !== "about");

test("every folder of functions is a topic, and every topic has one", () => {
  expect(folders("src/functions")).toEqual(words);
});

test("core is divided by the same words", () => {
  expect(folders("src/core")).toEqual(computed);
});

test("the tests of a topic stand in a folder of its name", () => {
  expect(folders("tests")).toEqual(expect.arrayContaining(computed));
});
