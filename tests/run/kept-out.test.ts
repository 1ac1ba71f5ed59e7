import { expect, it } from "vitest";
import { TREATMENT } from "../../src/functions/run";
import { answer } from "../stock/call";
import { plan } from "./run";
import { lineOf } from "./run-r07";

// A sword is tempered outside the embrittlement range of its steel although that leaves it soft: what is given up for
// it has to stand in the row. That a struck blade stays out of that range is common practice, no source.
it("a sword whose temper stays out of the brittle range says in its row why it is soft", () => {
  const line = { line: "K6", use: "European sword sharp", quench: "fast oil", good: 5, yield: 0.9 };
  const size = { length: 780, width: 50, thickness: 6 };
  const row = lineOf(plan([{ ...line, ...size, steel: "6150" }]), "K6");
  expect(row["band status"]).toMatch(/^(too soft|uncertain)$/);
  expect(row["next step"]).toMatch(
    /expect \d+ to \d+ HRC, soft to avoid the brittle range; \d+ °C \(\d+ °F\) would give \d+ %, but is brittle/,
  );
  expect(row.cautions).toMatch(
    /best chance of the band outside the brittle range, 39 %; \d+ °C \(\d+ °F\) would give/,
  );
});

it("the cell of TREATMENT that the sheet shows begins with it", () => {
  const [row] = answer(TREATMENT, "6150", "European sword sharp", null, "fast oil", 6, 780);
  expect(row?.at(-1)).toMatch(/^soft: a harder temper is brittle/);
});

it("with a typed aim the temper is that of the aim", () => {
  const row = plan([
    { use: "European sword sharp", steel: "6150", good: 5, yield: 0.9, "target HRC": 52 },
  ])[0];
  expect(row?.["next step"]).not.toMatch(/soft to avoid/);
});
