import { describe, expect, it } from "vitest";
import { calc as command } from "../../src/cli/commands/calc";
import { outcome } from "./in-process";

// 0.95 % carbon in 1095 and 0.60 in 5160 are the middle that the SAE numbering states (SAE J402: the last digits
// are hundredths of a per cent); the limits are those of SAE J403 and J404. Everything else is the contract of the command.

const calc = (args: readonly string[], input = "") => outcome(command, args, input);

describe("one formula", () => {
  it.each([
    ['=BLADE.CARBON("1095")', "0.95\n"],
    ['blade.carbon("5160")', "0.6\n"],
    ["=1/3", "0.333333333333333\n"],
    ["=10^21", "1e+21\n"],
    ["=2>1", "TRUE\n"],
    ['="quench"&" in oil"', "quench in oil\n"],
    ["-2+1", "-1\n"],
  ])("%s prints %j", async (formula, stdout) => {
    expect(await calc([formula])).toEqual({ status: 0, stdout, stderr: "" });
  });

  it("prints a spilled result as one JSON array a row", async () => {
    const { status, stdout } = await calc(['={1,"a, \u00e9";TRUE,0.1}']);
    expect({ status, stdout }).toEqual({ status: 0, stdout: '[1,"a, \u00e9"]\n[true,0.1]\n' });
  });

  it("prints an error with its sentence and exits 1", async () => {
    const { status, stdout } = await calc(['=BLADE.CARBON("nonsuch steel")']);
    expect(status).toBe(1);
    expect(stdout).toMatch(/^#N\/A: [^\n]*nonsuch steel[^\n]*\n$/);
  });

  it("names an unknown function and a near one", async () => {
    expect(await calc(['=BLADE.CARBN("1095")'])).toEqual({
      status: 1,
      stdout: "#NAME?: no function is called BLADE.CARBN; near: BLADE.CARBON\n",
      stderr: "",
    });
  });

  it("exits 1 for an error inside a spill, which stands in its place", async () => {
    const { status, stdout } = await calc(['=BLADE.CARBON({"1095";"nonsuch"})']);
    const rows = stdout
      .trimEnd()
      .split("\n")
      .map((line): unknown => JSON.parse(line));
    expect(status).toBe(1);
    expect(rows).toEqual([[0.95], [{ error: "#N/A", message: expect.stringContaining("nonsuch") }]]);
  });
});

describe("--json", () => {
  it.each([
    ['=BLADE.CARBON("1095")', { value: 0.95 }, 0],
    ["={1;2}*2", { value: [[2], [4]] }, 0],
    ["=1/0", { error: "#DIV/0!", message: expect.any(String) }, 1],
    [
      '=BLADE.CARBON({"nonsuch","1095"})',
      { value: [[{ error: "#N/A", message: expect.any(String) }, 0.95]] },
      1,
    ],
  ])("%s", async (formula, expected, status) => {
    const answer = await calc(["--json", formula]);
    expect(JSON.parse(answer.stdout)).toEqual({ formula, ...expected });
    expect(answer.stdout.split("\n")).toHaveLength(2);
    expect(answer.status).toBe(status);
  });

  it("reads formulas from standard input, one answer a line in order, exit 0", async () => {
    const lines = ['=BLADE.CARBON("1095")', "=1+", "", '=BLADE.CARBON("nonsuch")', "={1,2}", "  2*3"];
    const { status, stdout, stderr } = await calc(["--json", "-"], `${lines.join("\r\n")}\n`);
    const answers = stdout
      .trimEnd()
      .split("\n")
      .map((line) => JSON.parse(line) as { formula: string });
    expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
    expect(answers.map(({ formula }) => formula)).toEqual(lines);
    expect(answers[0]).toEqual({ formula: lines[0], value: 0.95 });
    expect(answers[1]).toMatchObject({
      error: "#VALUE!",
      message: expect.stringContaining("cannot be read"),
    });
    expect(answers[2]).toEqual({ formula: "", value: "" });
    expect(answers[3]).toMatchObject({ error: "#N/A", message: expect.stringContaining("nonsuch") });
    expect(answers[4]).toMatchObject({ value: [[1, 2]] });
    expect(answers[5]).toMatchObject({ value: 6 });
  });

  it("answers nothing to nothing", async () => {
    expect(await calc(["--json", "-"], "")).toEqual({ status: 0, stdout: "", stderr: "" });
  });

  it("keeps its place over a thousand lines", async () => {
    const lines = Array.from({ length: 1000 }, (_, i) => `=${i}*2`);
    const { stdout } = await calc(["--json", "-"], lines.join("\n"));
    const answers = stdout
      .trimEnd()
      .split("\n")
      .map((line) => JSON.parse(line) as { value: number });
    expect(answers.map(({ value }) => value)).toEqual(lines.map((_, i) => i * 2));
  });
});

describe("wrong arguments", () => {
  it.each([[[]], [[""]], [["--jsn", "=1"]], [["=1", "=2"]], [["-"]]])(
    "%j: usage on standard error, exit 2",
    async (args) => {
      const { status, stdout, stderr } = await calc(args);
      expect({ status, stdout }).toEqual({ status: 2, stdout: "" });
      expect(stderr).toMatch(/^calc: .+\nUsage: calc/);
    },
  );

  it("shows its usage when asked", async () => {
    expect(await calc(["--help"])).toMatchObject({ status: 0, stderr: "" });
    expect((await calc(["--help"])).stdout).toMatch(/^Usage: calc/);
  });
});
