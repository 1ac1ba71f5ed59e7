import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { launch } from "../browser";
import { fakeExcel } from "./fake-excel";
import { answered, choose, openPane, overflow } from "./open-pane";
import { type ServedFolder, serveFolder } from "./static-server";

let browser: Browser;
let served: ServedFolder;

beforeAll(async () => {
  served = await serveFolder(inject("pages"));
  browser = await launch();
});

afterAll(async () => {
  await browser?.close();
  served?.close();
});

async function open(hash = ""): Promise<Page> {
  return (await openPane(browser, { served, hash })).page;
}

async function rows(page: Page, caption: RegExp): Promise<string[][]> {
  const table = page.locator("table").filter({ has: page.locator("caption", { hasText: caption }) });
  return table
    .locator("tbody tr")
    .evaluateAll((found) => found.map((row) => [...row.children].map((cell) => cell.textContent ?? "")));
}

describe("Steels", () => {
  test("a grade typed in any spelling shows its limits", async () => {
    const page = await open("#steels");
    await page.getByLabel("Find a steel").fill("aisi 5160");
    await page.waitForSelector('h3:text-is("5160")');
    const composition = await rows(page, /Composition/);
    // SAE J404 and ASTM A29: C 0.56-0.64, Cr 0.70-0.90.
    expect(composition.find(([element]) => element === "C")?.slice(1, 3)).toEqual(["0.56", "0.64"]);
    expect(composition.find(([element]) => element === "Cr")?.slice(1, 3)).toEqual(["0.7", "0.9"]);
    await page.context().close();
  });

  test("hardness after temper is whole HRC, falls with the temper, and says where it comes from", async () => {
    const page = await open("#steels");
    const tempers = await rows(page, /Hardness after/);
    const likely = tempers.map((row) => Number(row[3]));
    expect(tempers.length).toBeGreaterThan(8);
    expect(tempers[2]?.slice(0, 2)).toEqual(["200", "392"]);
    for (const [, , range] of tempers) expect(range).toMatch(/^\d{2} to \d{2}$/);
    expect(likely).toEqual([...likely].sort((a, b) => b - a));
    await page.getByText("Where the hardness comes from").click();
    await page.waitForSelector("details[open] dd");
    expect(await page.locator("details[open] dd").allTextContents()).toContainEqual(
      expect.stringMatching(/HRC/),
    );
    await page.context().close();
  });

  test("part of a name offers the grades that have it; choosing one shows it", async () => {
    const page = await open("#steels");
    await page.getByLabel("Find a steel").fill("X50");
    await page.getByRole("button", { name: "X50CrMoV15" }).click();
    await page.waitForSelector('h3:text-is("X50CrMoV15")');
    expect(await page.getByLabel("Find a steel").inputValue()).toBe("X50CrMoV15");
    await page.context().close();
  });

  test("an unknown name is answered with a sentence", async () => {
    const page = await open("#steels");
    await page.getByLabel("Find a steel").fill("no such steel");
    await page.waitForFunction(() =>
      /no such steel/.test(document.querySelector(".count")?.textContent ?? ""),
    );
    await page.context().close();
  });
});

describe("Hardening and tempering", () => {
  test("a temper in °F is shown in both scales, and equals the same in °C", async () => {
    const page = await open("#tempering");
    const answer = page.locator(".answer").first();
    await page.getByLabel("Temper", { exact: true }).fill("392 F");
    await page.waitForSelector("text=200 °C (392 °F)");
    const inFahrenheit = await answer.textContent();
    await page.getByLabel("Temper", { exact: true }).fill("200");
    await answered(page);
    expect(await answer.textContent()).toBe(inFahrenheit);
    expect(inFahrenheit).toMatch(/^\d{2} to \d{2} HRC, likely \d{2}$/);
    await page.context().close();
  });

  test("a bad entry is answered with a sentence and nothing is left of the old figure", async () => {
    const page = await open("#tempering");
    await page.getByLabel("Temper", { exact: true }).fill("hot");
    await page.waitForSelector('.refusal:has-text("hot")');
    expect(await page.locator('section[aria-label="Hardness after a temper"] .answer').count()).toBe(0);
    await page.context().close();
  });
});

describe("Which steel", () => {
  test("a stainless fillet knife is answered with three steels in sentences, each with what it gives up", async () => {
    const page = await open("#choice");
    await page.getByLabel("What is it for?").selectOption("Fillet flexible");
    await page.getByLabel("Must it be stainless?").selectOption("yes");
    await page.waitForFunction(() => document.querySelector("section.line h3")?.textContent === "X55CrMo14");
    const told = await page.locator("section.line p:first-of-type").allTextContents();
    expect(told).toHaveLength(3);
    for (const sentence of told) {
      expect(sentence).toMatch(
        /Tempered at \d+ °C \(\d+ °F\) expect about \d\d HRC.*What it gives up: Wants a kiln/,
      );
    }
    expect((await rows(page, /after the first three/)).length).toBeGreaterThan(3);
    expect(await page.locator("code.formula").textContent()).toBe(
      '=BLADE.STEELS_FOR("Fillet flexible",,,,"yes",,,20)',
    );
    expect(await overflow(page)).toBe(0);
    await page.context().close();
  });

  test("a rack is held against a sword: what fits, and what does not with its reason", async () => {
    const page = await open("#choice");
    await page.getByLabel("What is it for?").selectOption("European sword sharp");
    await page.getByLabel("Hold it against my rack").fill("5160 4.20\nD2 14\nNonesuch");
    await page.waitForSelector('section.line h3:text-is("5160")');
    expect(await page.locator("section.line p").first().textContent()).toContain("Price a kg 4.2.");
    const barred = page.getByRole("region", { name: "Not these" });
    expect(await barred.textContent()).toMatch(/D2.*not the trade's choice/);
    expect(await barred.textContent()).toMatch(/"Nonesuch" is not in the grade table/);
    await page.context().close();
  });
});

describe("Hardness bands", () => {
  test("56 HRC is too hard for a heavy cutting sword: common practice, no source", async () => {
    const page = await open("#bands");
    await page.getByLabel("Use").selectOption("Heavy cutting sword hard targets");
    await page.getByLabel("Steel").fill("5160");
    await page.getByLabel("Hardness, HRC").fill("56");
    await page.waitForSelector('.verdict:text-is("too hard")');
    await page.context().close();
  });
});

describe("Functions", () => {
  test("the help of one function opens by its address", async () => {
    const page = await open("#functions/CARBON");
    await page.waitForSelector("text=BLADE.CARBON(steel");
    await page.context().close();
  });

  test("a function is found by a word of its arguments, and says what each accepts, in both scales", async () => {
    const page = await open("#functions");
    await page.getByLabel("Find a function").fill("cycles");
    await page.waitForSelector('.count:has-text(" of ")');
    await page.locator('summary code:text-is("TEMPERED_RANGE")').click();
    // 800 °C is 1472 °F: 800 × 9 / 5 + 32.
    await page.waitForSelector("dd:has-text('Accepted: a temperature in °C'):has-text('800 °C (1472 °F)')");
    await page.context().close();
  });

  test("a search without a match says what to try", async () => {
    const page = await open("#functions");
    await page.getByLabel("Find a function").fill("xyzzy");
    await page.waitForSelector('.count:has-text("0 of")');
    expect(await page.locator(".count").textContent()).toContain("try one word");
    await page.context().close();
  });
});

describe("Run checks", () => {
  test("pasted lines are answered line by line, a faulty one first with the way out", async () => {
    const page = await open("#checks");
    await page.getByLabel("Lines of the run").fill("line;steel;good;yield\nA;1084;10;1\nB;mystery bar;5;1");
    await page.waitForSelector(
      '.verdict:text-is("2 lines: 1 not planned, 1 clear"), .verdict:has-text("2 lines")',
    );
    expect(await page.locator("h4").first().textContent()).toBe("B: not planned");
    expect(await page.locator(".refusal").first().textContent()).toContain("mystery bar");
    // By hand: where every blade is good, ten wanted are ten started.
    const totals = await rows(page, /Totals/);
    expect(totals.find(([what]) => what === "starts")?.[1]).toBe("10");
    await page.context().close();
  });

  test("lines without a heading that counts are refused in one sentence", async () => {
    const page = await open("#checks");
    await page.getByLabel("Lines of the run").fill("colour\tweight\nred\t5");
    await page.waitForSelector('.refusal:has-text("headings")');
    expect(await page.locator("h4").count()).toBe(0);
    await page.context().close();
  });
});

describe("Units for reading", () => {
  test("°F first turns what is read, keeps what was typed and every formula, and is remembered", async () => {
    const page = await open("#tempering");
    await page.getByLabel("Temper", { exact: true }).fill("200");
    await page.getByLabel("Wanted hardness, HRC").fill("59");
    await answered(page);
    const formulas = await page.locator(".formula").allTextContents();
    await page.getByLabel("Temperatures in").selectOption("°F first");
    await page.waitForSelector("dd:has-text('392 °F (200 °C)')");
    expect(await page.getByLabel("Wanted hardness, HRC").inputValue()).toBe("59");
    await answered(page);
    expect(await page.locator(".formula").allTextContents()).toEqual(formulas);
    await page.reload();
    await page.waitForSelector("dd:has-text('392 °F (200 °C)')");
    expect(await page.getByLabel("Temperatures in").inputValue()).toBe("°F first");
    await page.context().close();
  });

  test("inches turn a band's thickness and keep its hardness", async () => {
    const page = await open("#bands");
    await page.getByLabel("Use").selectOption("Chef knife thin hard");
    const fact = (name: string) => page.locator("dl.facts > div", { hasText: name }).first().locator("dd");
    const hardness = await fact("Hardness").textContent();
    const mm = /^([\d.]+) to ([\d.]+) mm$/.exec(
      (await fact("Thickness behind the edge").textContent()) ?? "",
    );
    await page.getByLabel("Lengths in").selectOption("inch");
    // The inch is 25.4 mm (NIST SP 811).
    const inches = mm?.slice(1).map((figure) => (Number(figure) / 25.4).toFixed(3));
    await page.waitForSelector(`dd:text-is("${inches?.join(" to ")} in")`);
    expect(await fact("Hardness").textContent()).toBe(hardness);
    await page.context().close();
  });

  test("a browser that keeps nothing still shows every page", async () => {
    const before = async (page: Page) => {
      await page.addInitScript(`
        Object.defineProperty(window, "localStorage", { get() { throw new Error("storage is off"); } });`);
    };
    const { page, problems } = await openPane(browser, { served, hash: "#tempering", before });
    await page.getByLabel("Temperatures in").selectOption("°F first");
    await page.waitForSelector("dd:has-text('392 °F (200 °C)')");
    expect(problems).toEqual([]);
    await page.context().close();
  });
});

describe("on paper", () => {
  test("a caution sheet holds one step, the closing words, and nothing to press", async () => {
    const page = await open("#cautions");
    await page.getByLabel("Step of the run").selectOption("Oil quench");
    await page.evaluate("document.querySelector('.pane').dataset.theme = 'dark'");
    await page.emulateMedia({ media: "print", colorScheme: "dark" });
    const paper = await page.evaluate("getComputedStyle(document.querySelector('.pane')).backgroundColor");
    expect(paper).toBe("rgb(255, 255, 255)");
    expect(await overflow(page)).toBe(0);
    expect(await page.locator("h3").allTextContents()).toEqual(["Oil quench"]);
    expect(await page.locator(".caution").isVisible()).toBe(true);
    expect(await page.locator(".print-only").isVisible()).toBe(true);
    for (const control of await page.locator("button, select, nav").all()) {
      expect(await control.isVisible()).toBe(false);
    }
    await page.context().close();
  });

  test("a grade sheet carries its sources, which are folded away again afterwards", async () => {
    const page = await open("#steels");
    await page.evaluate("window.print = () => undefined");
    await page.getByRole("button", { name: "Print this grade sheet" }).click();
    await page.evaluate("dispatchEvent(new Event('beforeprint'))");
    await page.emulateMedia({ media: "print" });
    expect(await page.locator("dt", { hasText: "Expected error" }).first().isVisible()).toBe(true);
    expect(await page.locator("caption", { hasText: "Composition" }).isVisible()).toBe(true);
    expect(await page.getByLabel("Find a steel").isVisible()).toBe(false);
    await page.evaluate("dispatchEvent(new Event('afterprint'))");
    expect(await page.locator("details[open]").count()).toBe(0);
    await page.context().close();
  });
});

describe("About", () => {
  test("names what is kept where, and leads to the licences of all that is bundled", async () => {
    const page = await open("#about");
    const kept = await page.locator("dl").first().textContent();
    expect(kept).toMatch(/IndexedDB/);
    await page.getByLabel("Temperatures in").selectOption("°F first");
    const keys = await page.evaluate("Object.keys(localStorage)");
    for (const key of keys as string[]) expect(kept).toContain(key);
    const notices = await page.request.get(new URL("licences.txt", page.url()).href);
    expect(notices.status()).toBe(200);
    expect(await notices.text()).toMatch(/fflate [\d.]+: MIT/);
    await page.context().close();
  });
});

describe("in Excel", () => {
  async function inExcel(holds: string): Promise<Page> {
    const before = (page: Page) => fakeExcel(page, holds);
    const { page } = await openPane(browser, { served, hash: "#tempering", before });
    return page;
  }

  const written = (page: Page) => page.evaluate<string[]>("window.written");

  test("an empty cell takes the formula at once", async () => {
    const page = await inExcel("");
    expect(await page.locator(".notice").count()).toBe(0);
    await page.getByRole("button", { name: "Put into the selected cell" }).first().click();
    await page.waitForSelector('.insert-status:has-text("Written into Plan!B2.")');
    expect(await written(page)).toEqual(['=BLADE.TEMPERED_RANGE("1095",200,2,2)']);
    await page.context().close();
  });

  test("a cell that holds something is only overwritten after asking", async () => {
    const page = await inExcel("1095");
    await page.getByRole("button", { name: "Put into the selected cell" }).first().click();
    await page.waitForSelector("text=Plan!B2 holds 1095");
    expect(await written(page)).toEqual([]);
    await page.getByRole("button", { name: "Replace it" }).click();
    await page.waitForSelector("text=Written into Plan!B2.");
    expect((await written(page)).length).toBe(1);
    await page.context().close();
  });

  test("the steel is taken from the selected cell, and the pane follows Excel's dark colours", async () => {
    const page = await inExcel("52100");
    await choose(page, "Steels");
    await page.getByRole("button", { name: "Take it from the selected cell" }).click();
    await page.waitForSelector('h3:text-is("52100")');
    expect(await page.locator("#pane").getAttribute("data-theme")).toBe("dark");
    await page.context().close();
  });
});
