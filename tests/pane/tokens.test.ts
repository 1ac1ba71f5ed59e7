import { readFileSync } from "node:fs";
import { webDarkTheme, webLightTheme } from "@fluentui/tokens";
import { expect, test } from "vitest";

const style = readFileSync("src/taskpane/pane.css", "utf8");

/** The variables of each block that sets any: light, dark by system, dark by host, paper. */
const blocks = [...style.matchAll(/\{([^{}]*--color[^{}]*)\}/g)]
  .map(([, block = ""]) => [...block.matchAll(/--(\w+): ([^;]+);/g)])
  .filter((variables) => variables.length > 0)
  .map((variables) => new Map(variables.map(([, name = "", value = ""]) => [name, value])));

function expectTheme(variables: Map<string, string> | undefined, theme: object): void {
  const values = new Map(Object.entries(theme));
  for (const [name, value] of variables ?? []) {
    expect(value.replaceAll('"', "'"), name).toBe(String(values.get(name)).replaceAll('"', "'"));
  }
}

test("the pane's variables have the values of Fluent's own themes", () => {
  const [light, darkBySystem, darkByHost] = blocks;
  expect(blocks.length).toBe(4);
  expect(light?.size).toBeGreaterThan(20);
  expectTheme(light, webLightTheme);
  expectTheme(darkBySystem, webDarkTheme);
  expect(darkByHost).toEqual(darkBySystem);
});

test("paper takes black on white, whatever the theme", () => {
  const [light, , , paper] = blocks;
  expect(paper?.size).toBeGreaterThan(2);
  for (const [name, value] of paper ?? []) {
    expect(light?.has(name), name).toBe(true);
    expect(value, name).toBe(/Background/.test(name) ? "#ffffff" : "#000000");
  }
});
