import { execFileSync } from "node:child_process";
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import type { Browser, Locator, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import demo from "../../src/workbook/sheets/run-r07/swords.json";
import { launch } from "../browser";
import { fakeExcel } from "./fake-excel";
import { answered as answeredForm, openPane, overflow } from "./open-pane";
import { type ServedFolder, serveFolder } from "./static-server";

const BLADE = '"1095",30,7,1.5,"agitated water",0.001,12,0.0002,1';

/** Kept after the tests, to be looked at. */
const PICTURES = "node_modules/.cache/screens";

/** The blade that the page Shape opens with. */
const EXAMPLE = '{0;450;850;900},{50;38;22;0},{6;4.5;3.5;0},"diamond"';

/** Asked of the command line, to be held against what the pane shows. */
const ASKED = {
  quench: `=BLADE.SECTION_QUENCH(${BLADE})`,
  profile: `=BLADE.SECTION_PROFILE(${BLADE})`,
  fit: `=BLADE.SECTION_FIT(${BLADE},,,9.5)`,
  flex: `=BLADE.FLEX(${EXAMPLE},,"1095",,,,,52,,810)`,
  ring: `=BLADE.RING(${EXAMPLE},,"1095")`,
  curve: '=BLADE.TEMPER_CURVE("1095",,,25,4)',
} as const;

const answers = new Map<string, (number | string)[][]>();

const answered = (name: keyof typeof ASKED) => answers.get(name) ?? [];

let browser: Browser;
let served: ServedFolder;

beforeAll(async () => {
  // The command line is bundled anew where a source has changed: not in the time of a test.
  for (const [name, formula] of Object.entries(ASKED)) answers.set(name, calc(formula));
  served = await serveFolder(inject("pages"));
  browser = await launch();
}, 180_000);

afterAll(async () => {
  await browser?.close();
  served?.close();
});

async function open(hash: string, before?: (page: Page) => Promise<void>): Promise<Page> {
  const at = before === undefined ? { served, hash } : { served, hash, before };
  return (await openPane(browser, at)).page;
}

/** The rows that the command line answers, which has no pane. */
function calc(formula: string): (number | string)[][] {
  const answer = execFileSync(process.execPath, ["src/cli/start.cjs", "src/cli/calc.ts", formula], {
    encoding: "utf8",
  });
  return answer
    .trim()
    .split("\n")
    .map((line) => JSON.parse(line));
}

async function fact(page: Page, name: string): Promise<string | null> {
  return page
    .locator("dl.facts > div", { has: page.locator(`dt:text-is("${name}")`) })
    .locator("dd")
    .textContent();
}

async function tableRows(page: Page, summary: string): Promise<string[][]> {
  const details = page.locator("details", { has: page.locator(`summary:text-is("${summary}")`) });
  await details.locator("summary").first().click();
  await details.locator("tbody tr").first().waitFor();
  return details
    .locator("tbody tr")
    .evaluateAll((found) => found.map((row) => [...row.children].map((cell) => cell.textContent ?? "")));
}

function drawing(page: Page, title: RegExp): Locator {
  return page.locator("svg.picture", { has: page.locator("title", { hasText: title }) });
}

type Point = readonly [number, number];

async function corners(picture: Locator, kind: string): Promise<Point[]> {
  const text = (await picture.locator(`polygon.${kind}`).getAttribute("points")) ?? "";
  return text.split(" ").map((pair) => {
    const [x = 0, y = 0] = pair.split(",").map(Number);
    return [x, y];
  });
}

/** Area of a closed outline by the surveyor's formula. */
function areaOf(points: readonly Point[]): number {
  const twice = points.reduce((sum, [x, y], at) => {
    const [nextX, nextY] = points[(at + 1) % points.length] ?? [0, 0];
    return sum + x * nextY - nextX * y;
  }, 0);
  return Math.abs(twice) / 2;
}

const spanOf = (values: readonly number[]) => Math.max(...values) - Math.min(...values);

describe("Section", () => {
  test("facts are those of the command line", async () => {
    const page = await open("#section");
    const [[depth, edge, middle, spine, said] = []] = answered("quench");
    expect(await fact(page, "Hardened depth, likely")).toBe(`${Number(depth).toFixed(1)} mm`);
    expect(await fact(page, "Edge")).toBe(`${edge} HRC`);
    expect(await fact(page, "Middle")).toBe(`${middle} HRC`);
    expect(await fact(page, "Spine")).toBe(`${spine} HRC`);
    expect(said).toContain(await page.locator(".verdict").textContent());
    expect(await page.locator("code.formula").first().textContent()).toBe(ASKED.quench);
    await page.context().close();
  });

  test("the table beside the chart is the profile of the command line, Vickers where Rockwell C ends", async () => {
    const page = await open("#section");
    const profile = answered("profile");
    const shown = await tableRows(page, "The same figures in a table");
    const asShown = (cell: number | string) => (typeof cell === "number" ? cell.toFixed(1) : cell);
    expect(shown.map((row) => row.slice(0, 4))).toEqual(profile.map((row) => row.map(asShown)));
    expect(shown.flat()).toContain("under 20");
    for (const [, , , , vickers] of shown) expect(Number(vickers)).toBeGreaterThan(100);
    await page.context().close();
  });

  test("the section is drawn to scale and hatched as far as it is hard", async () => {
    const page = await open("#section");
    const picture = drawing(page, /The section to scale/);
    const metal = await corners(picture, "metal");
    const hard = await corners(picture, "hard");
    const [width, height] = [spanOf(metal.map(([x]) => x)), spanOf(metal.map(([, y]) => y))];
    expect(height / width).toBeCloseTo(7 / 30, 3);
    const depth = Number.parseFloat((await fact(page, "Hardened depth, likely")) ?? "");
    expect((30 * spanOf(hard.map(([x]) => x))) / width).toBeCloseTo(depth, 0);
    expect(await picture.getAttribute("role")).toBe("img");
    expect(await picture.locator("desc").textContent()).toContain("30 mm wide");
    await page.context().close();
  });

  test("without clay no caution of clay is left, and an alloy the calculation cannot know is refused", async () => {
    const page = await open("#section");
    await page.getByLabel("Clay", { exact: true }).fill("");
    await page.getByLabel("Thin coat below it").fill("");
    const answer = page.locator('section[aria-label="After the quench"]');
    await page.waitForFunction(
      () =>
        !/no clay value/i.test(
          document.querySelector('section[aria-label="After the quench"]')?.textContent ?? "",
        ),
    );
    await page.getByLabel("Edge, mm").fill("9");
    await answer.locator(".refusal").waitFor();
    expect(await page.locator("svg.picture").count()).toBe(0);
    await page.context().close();
  });

  test("a measured blade gives the clay that fits, and the form takes it", async () => {
    const page = await open("#section");
    const [[clay] = []] = answered("fit");
    await page.getByLabel("Trial blade hard to, mm").fill("9.5");
    await page.getByRole("button", { name: "Work with it above" }).click();
    expect(await page.getByLabel("Clay", { exact: true }).inputValue()).toBe(Number(clay).toPrecision(3));
    expect(await fact(page, "Hardened depth, likely")).toBe("9.5 mm");
    await page.context().close();
  });
});

describe("Shape", () => {
  async function shape(fill: Readonly<Record<string, string>>, grind: string): Promise<Page> {
    const page = await open("#shape");
    await page.getByLabel("Grind").selectOption(grind);
    await answeredForm(page);
    for (const [name, value] of Object.entries(fill))
      await page.getByLabel(name, { exact: true }).fill(value);
    await answeredForm(page);
    return page;
  }

  // By hand: 0.5 × the prismatoid rule over 450, 400 and 50 mm is 77 220.833 mm³, at 7.85 g/cm³ 606.184 g.
  test("the first blade has the mass worked by hand", async () => {
    const page = await open("#shape");
    await page.getByLabel("Steel or density").fill("7.85");
    await page.waitForSelector('.answer:has-text("606 g")');
    expect(await fact(page, "Volume")).toBe("77.2 cm³");
    await page.context().close();
  });

  test("profile and balance are drawn on one scale", async () => {
    const page = await open("#shape");
    const picture = drawing(page, /The blade to scale/);
    const outline = await corners(picture, "metal");
    const xs = outline.map(([x]) => x);
    const pixelsAMm = spanOf(xs) / 900;
    expect(spanOf(outline.map(([, y]) => y)) / pixelsAMm).toBeCloseTo(50, 0);
    const balance = Number(await picture.locator("line.place").getAttribute("x1"));
    const said = Number(/balance at (\d+) mm/.exec((await page.locator(".answer").textContent()) ?? "")?.[1]);
    expect((balance - Math.min(...xs)) / pixelsAMm).toBeCloseTo(said, -1);
    await page.context().close();
  });

  // Areas by hand, as the worked examples of SECTION_AREA and FULLERED_AREA give them; the drawing is
  // measured by the surveyor's formula, which knows no grind.
  test.each([
    ["diamond", "0 40 6\n100 40 6", {}, 120],
    ["rectangle", "0 40 5\n100 40 5", {}, 200],
    ["lenticular", "0 40 6\n100 40 6", {}, 160.7177],
    ["flat", "0 45 3\n100 45 3", { "Edge, mm": "0.4" }, 76.5],
    ["part flat", "0 40 4\n100 40 4", { "Edge, mm": "0.5", "Bevel height, mm": "18" }, 128.5],
    ["chisel", "0 40 4\n100 40 4", { "Edge, mm": "0.5", "Bevel height, mm": "18" }, 128.5],
    [
      "hollow",
      "0 32 4\n100 32 4",
      { "Edge, mm": "0.5", "Bevel height, mm": "16", "Wheel radius or bulge, mm": "127" },
      94.5213,
    ],
    ["convex", "0 40 4\n100 40 4", { "Wheel radius or bulge, mm": "0.5" }, 106.7033],
  ] as const)("a %s section is drawn with its own area", async (grind, stations, fill, area) => {
    const page = await shape({ ...fill, "Stations, heel to tip": stations }, grind);
    const picture = drawing(page, /The section at the heel/);
    const outline = await corners(picture, "metal");
    const width = Number(stations.split(" ")[1]);
    const pixelsAMm = spanOf(outline.map(([x]) => x)) / width;
    expect(areaOf(outline) / pixelsAMm ** 2 / area).toBeCloseTo(1, 2);
    expect(await picture.locator("desc").textContent()).toContain(`${area.toFixed(1)} mm²`);
    await page.context().close();
  });

  // By hand: a lens 45 × 5.5 of 165.4919 mm² less, on each side, the segment 11.26555 of a fuller 14 wide and
  // 1.2 deep and the crown 2.45185 above its chord; a ridge of the same size less 11.26555 and 14² × 5.5 / (4 × 45).
  test.each([
    ["lenticular", 138.0571],
    ["diamond", 89.2411],
  ])("fullers take their own area from a %s section", async (grind, area) => {
    const page = await shape({ "Stations, heel to tip": "0 45 5.5 14 1.2\n500 45 5.5 14 1.2" }, grind);
    const picture = drawing(page, /The section at the heel/);
    const outline = await corners(picture, "metal");
    const pixelsAMm = spanOf(outline.map(([x]) => x)) / 45;
    expect(areaOf(outline) / pixelsAMm ** 2 / area).toBeCloseTo(1, 2);
    expect(await picture.locator("desc").textContent()).toContain(`${area.toFixed(1)} mm²`);
    await page.context().close();
  });

  test("bending and ringing are told as the command line answers them", async () => {
    const page = await open("#shape");
    const [flex = []] = answered("flex");
    const [ring = []] = answered("ring");
    const rounded = (cell: unknown) => String(Math.round(Number(cell)));
    expect(await fact(page, "Stiffness")).toBe(`${Number(flex[1]).toPrecision(3)} N/mm at 810 mm`);
    expect(await fact(page, "Takes a set from")).toBe(
      `${rounded(flex[8])} to ${rounded(flex[9])} N, likely ${rounded(flex[5])} N`,
    );
    expect(await fact(page, "Bent by then")).toBe(
      `${rounded(flex[6])} mm and ${rounded(flex[7])}° (${rounded(flex[10])} to ${rounded(flex[11])}°)`,
    );
    expect(await fact(page, "Rings at")).toBe(
      `${Number(ring[0]).toPrecision(3)} Hz, then ${Number(ring[3]).toPrecision(3)} Hz`,
    );
    expect(await fact(page, "Quiet points")).toBe(`${rounded(ring[1])} mm and ${rounded(ring[2])} mm`);
    expect(await page.locator(".caution").textContent()).toContain("not a proof test");
    await page.context().close();
  });

  test("the bent shape is drawn to scale, with the load where FLEX puts it", async () => {
    const page = await open("#shape");
    const [flex = []] = answered("flex");
    const picture = drawing(page, /The blade bent to its set/);
    const straight = await corners(picture, "before");
    const pixelsAMm = spanOf(straight.map(([x]) => x)) / 900;
    const dots = await picture.locator("circle.dot").all();
    const place = async (dot: Locator | undefined, axis: "cx" | "cy") =>
      Number(await dot?.getAttribute(axis));
    const across = ((await place(dots[1], "cy")) - (await place(dots[0], "cy"))) / pixelsAMm;
    expect(across).toBeCloseTo(Number(flex[6]), 0);
    expect(await place(dots[0], "cx")).toBeCloseTo(Math.min(...straight.map(([x]) => x)), 1);
    // The blade keeps its length: the middle line from the held place to the load is as long as the place of the load.
    const bent = await corners(picture, "metal");
    const half = bent.slice(0, bent.length / 2);
    const steps = half
      .slice(1)
      .map(([x, y], at) => Math.hypot(x - (half[at]?.[0] ?? 0), y - (half[at]?.[1] ?? 0)));
    const length = steps.reduce((sum, step) => sum + step, 0) / pixelsAMm;
    expect(length / 900).toBeCloseTo(1, 1.5);
    expect(await picture.locator("desc").textContent()).toContain(`at ${Math.round(Number(flex[5]))} N`);
    await page.context().close();
  });

  test("without a hardness there is no set and no bent blade; a wrong one is refused and the rest stays", async () => {
    const page = await shape({ "Blade HRC": "" }, "diamond");
    expect(await drawing(page, /bent to its set/).count()).toBe(0);
    expect(await fact(page, "Stiffness")).toMatch(/N\/mm/);
    await page.getByLabel("Blade HRC").fill("12");
    expect(await page.locator(".refusal").textContent()).toMatch(/12 is outside/);
    expect(await fact(page, "Rings at")).toMatch(/Hz/);
    await page.context().close();
  });

  // The third sword of the demo, summed by hand in demo-run.test.ts: 1238 g, balance at 102 mm.
  test.each([
    ["light", 350],
    ["dark", 350],
    ["light", 400],
  ] as const)("a sword of the demo with its fittings, %s, %i pixels", async (colorScheme, width) => {
    const { page } = await openPane(browser, {
      served,
      hash: "#shape",
      options: { viewport: { width, height: 720 }, colorScheme },
    });
    const [, , sword] = demo.swords;
    const lines = (rows: readonly (readonly unknown[])[]) => rows.map((row) => row.join(" ")).join("\n");
    const fittings = (sword?.parts ?? []).map(([, form, size = 0, mass = 0, place]) => {
      const inertia = (Number(mass) / 1000) * (Number(size) / 1000) ** 2 * (form === "ball" ? 0.1 : 1 / 12);
      return [mass, place, inertia.toFixed(9)];
    });
    await page.getByLabel("Steel or density").fill("7.85");
    await page.getByLabel("Stations, heel to tip").fill(lines(sword?.stations ?? []));
    await page.getByLabel("Tang and fittings").fill(lines(fittings));
    await page.getByLabel("Blade HRC").fill(String(sword?.hrc));
    await page.waitForSelector('.answer:has-text("1238 g (blade 606 g), balance at 102 mm")');
    expect(await fact(page, "Centre of percussion")).toBe("715 mm, held at -40 mm");
    const words = await drawing(page, /The blade to scale/)
      .locator("text")
      .allTextContents();
    expect(words).toEqual(expect.arrayContaining(["balance 102 mm", "percussion 715 mm"]));
    expect(words.filter((text) => text.startsWith("quiet")).length).toBe(1);
    expect(await overflow(page)).toBe(0);
    mkdirSync(PICTURES, { recursive: true });
    await page.screenshot({ path: join(PICTURES, `sword-${width}-${colorScheme}.png`), fullPage: true });
    await page.context().close();
  });

  test("a line that is no station is named, and no drawing of an older blade is left", async () => {
    const page = await shape({ "Stations, heel to tip": "0 50 6\n450 38" }, "diamond");
    expect(await page.locator(".refusal").textContent()).toMatch(/^line 2, "450 38", holds 2 figures/);
    expect(await page.locator("svg.picture").count()).toBe(0);
    await page.context().close();
  });

  test("the formula goes into the sheet with the stations in it", async () => {
    const page = await open("#shape", (opened) => fakeExcel(opened, ""));
    await page.getByRole("button", { name: "Put into the selected cell" }).first().click();
    await page.waitForSelector("text=Written into Plan!B2.");
    expect(await page.evaluate<string[]>("window.written")).toEqual([
      '=BLADE.STATIONS({0;450;850;900},{50;38;22;0},{6;4.5;3.5;0},"diamond",,"1095")',
    ]);
    await page.context().close();
  });
});

describe("Tempering curve", () => {
  test("the table beside it is the curve of the command line", async () => {
    const page = await open("#tempering");
    const curve = answered("curve");
    const shown = await tableRows(page, "The same figures in a table");
    expect(shown.map(([celsius, , ...hrc]) => [celsius, ...hrc])).toEqual(
      curve.map((row) => row.map(String)),
    );
    await page.context().close();
  });

  test("the figures of a steelmaker's sheet are marked where it prints them", async () => {
    const page = await open("#tempering");
    await page.getByLabel("Steel").fill("D2");
    const picture = drawing(page, /Tempering curve of D2/);
    await picture.waitFor();
    // The D2 sheet of Crucible, two tempers of 2 h: 150 to 540 °C in eight figures, the first 62 HRC, the last 55.
    const heights = await picture
      .locator("circle.dot")
      .evaluateAll((dots) => dots.map((dot) => Number(dot.getAttribute("cy"))));
    expect(heights.length).toBe(8);
    expect(heights.indexOf(Math.min(...heights))).toBe(0);
    expect(heights.indexOf(Math.max(...heights))).toBe(7);
    await page.context().close();
  });

  test("the embrittlement range is hatched and named", async () => {
    const page = await open("#tempering");
    const picture = drawing(page, /Tempering curve/);
    await picture.waitFor();
    expect(await picture.locator("rect.wary").count()).toBe(1);
    expect(await picture.locator("desc").textContent()).toContain("brittle from 230 to 370 °C");
    await page.context().close();
  });

  const told = (page: Page) => page.locator('section[aria-label="Tempering curve"] .told');

  test("a point of the line is read under the pointer and by keyboard, with the figures of the table", async () => {
    const page = await open("#tempering");
    const picture = drawing(page, /Tempering curve/);
    await picture.waitFor();
    const [[celsius = 0, low = 0, likely = 0, high = 0] = []] = answered("curve");
    const place = `${celsius} °C (${Math.round(Number(celsius) * 1.8 + 32)} °F)`;
    const words = `${place}: likely ${Number(likely).toFixed(1)} HRC, nine blades in ten ${Number(low).toFixed(1)} to ${Number(high).toFixed(1)}`;
    const box = await picture.boundingBox();
    await page.mouse.move((box?.x ?? 0) + 39, (box?.y ?? 0) + 60);
    expect(await told(page).textContent()).toContain(words);
    expect(await told(page).getAttribute("aria-live")).toBe("off");
    await page.mouse.move(0, 0);
    expect(await told(page).textContent()).toMatch(/^Point at the line/);
    const slider = page.getByRole("slider", { name: "Read along: Tempering curve of 1095" });
    await slider.focus();
    await page.keyboard.press("Home");
    expect(await told(page).textContent()).toContain(words);
    expect(await told(page).getAttribute("aria-live")).toBe("polite");
    expect(await slider.getAttribute("aria-valuetext")).toBe(place);
    await page.keyboard.press("ArrowRight");
    expect(await told(page).textContent()).toMatch(/^155 °C \(311 °F\): /);
    expect(await page.locator(".marked circle.reading").count()).toBe(1);
    await page.context().close();
  });

  test.each([
    ["light", 350],
    ["dark", 400],
    ["light", 1280],
    ["dark", 1280],
  ] as const)(
    "band of the use, aim, own coupons and two more steels, %s, %i pixels",
    async (colorScheme, width) => {
      const { page } = await openPane(browser, {
        served,
        hash: "#tempering",
        options: { viewport: { width, height: 800 }, colorScheme },
      });
      await page.getByLabel("Band of the use").selectOption("Chef knife thin hard");
      await page.getByLabel("Compared with").fill("52100, O1");
      await page.getByLabel("Own coupons").fill("200 61; 230 59.5");
      const picture = drawing(page, /Tempering curve/);
      await picture.locator("circle.own").nth(1).waitFor();
      await picture.locator("path.dash-2").waitFor();
      const words = await picture.locator("text").allTextContents();
      expect(words).toEqual(
        expect.arrayContaining(["1095", "52100", "O1", "pale straw", "grey", "°C", "°F"]),
      );
      // Eight colours, as the lists have them, all inside the span that is drawn.
      expect(await picture.locator("rect.colour").count()).toBe(8);
      const at = async (locator: Locator, name: string) => Number(await locator.getAttribute(name));
      const stripe = picture.locator("rect.wanted");
      const aim = await at(picture.locator("line.aim"), "y1");
      const top = await at(stripe, "y");
      expect(aim).toBeGreaterThanOrEqual(top);
      expect(aim).toBeLessThanOrEqual(top + (await at(stripe, "height")));
      await page.getByRole("slider", { name: /Tempering curve/ }).focus();
      await page.keyboard.press("PageUp");
      expect(await told(page).textContent()).toMatch(/52100 \d\d\.\d; O1 \d\d\.\d/);
      expect(await page.locator(".marked circle.reading").count()).toBe(3);
      expect(await overflow(page)).toBe(0);
      mkdirSync(PICTURES, { recursive: true });
      const section = page.locator('section[aria-label="Tempering curve"]');
      await section.screenshot({ path: join(PICTURES, `curve-${width}-${colorScheme}.png`) });
      await page.context().close();
    },
  );

  test("an oven is set by the straight line between two checks", async () => {
    const page = await open("#tempering");
    await page.getByLabel("Oven set to, °C").fill("180 220");
    await page.getByLabel("Thermometer read, °C").fill("190; 236");
    // By hand: 180 + 40 × (200 - 190) / (236 - 190) = 188.7.
    await page.waitForSelector('.answer:has-text("set 189 °C (372 °F)")');
    expect(await fact(page, "The oven runs")).toBe("11 °C (20 °F) hotter beside the blade than set");
    await page.context().close();
  });

  test("a hardness with two tempers says so", async () => {
    const page = await open("#tempering");
    await page.getByLabel("Steel").fill("H13");
    await page.getByLabel("Wanted hardness, HRC").fill("54");
    // The H13 sheet rises from 53 HRC at 350 °C to 56 at 500 °C and falls to 52.5 at 550 °C.
    await page.waitForSelector('dd:text-is("two answers")');
    await page.context().close();
  });
});

describe("Steels", () => {
  test("a heat outside its grade is told by element and verdict", async () => {
    const page = await open("#steels");
    await page.getByLabel("Find a steel").fill("1075");
    await page.waitForSelector('h3:text-is("1075")');
    // SAE J403 and ASTM A29: 1075 holds C 0.70-0.80 and Mn 0.40-0.70.
    await page.getByLabel("Analysis").fill("C 0.75 Mn 0.95");
    const heat = page.locator('section[aria-label="Your heat"]');
    await heat.locator(".verdict").waitFor();
    expect(await heat.locator(".verdict").textContent()).toMatch(/^1075: .*fail/i);
    const row = heat.locator("tbody tr", { has: page.locator('th:text-is("Mn")') });
    expect(await row.locator("td").allTextContents()).toEqual(
      expect.arrayContaining(["0.4", "0.7", "0.95", "HIGH"]),
    );
    await page.context().close();
  });
});
