import { numberText, temperatureText } from "../quantity-text";
import { NotAvailable } from "../refusal";
import { sourceText } from "../sources";
import type { Steel } from "../steel/steel";
import { COMPOSITION_FORMULA } from "./composition-formula";
import { type PublishedPoint, publishedPoints } from "./fits";

/** Above this a steel tempers by its own carbides, with plateaus and peaks that no formula here follows. */
const MAX_CHROMIUM = 1.8;

function pointText({ temperC, hrc, source }: PublishedPoint): string {
  const [low, high] = temperC;
  const at = low === high ? temperatureText(low) : `${temperatureText(low)} to ${temperatureText(high)}`;
  const hardness = hrc[0] === hrc[1] ? numberText(hrc[0]) : `${numberText(hrc[0])} to ${numberText(hrc[1])}`;
  return `${hardness} HRC after ${at} (${sourceText(source)})`;
}

/**
 * Refuses steels that only a table of their own could answer for.
 *
 * @throws NotAvailable with the single tempers published for the grade, where there are any.
 */
export function refuseWithoutCurve(steel: Steel): void {
  const points = publishedPoints(steel.grade?.designation ?? "");
  const chromium = steel.composition.Cr;
  if (points.length === 0 && chromium <= MAX_CHROMIUM) return;
  const published = points.length === 0 ? "" : `; published: ${points.map(pointText).join("; ")}`;
  const limit = COMPOSITION_FORMULA.inputs.Cr?.max ?? 0;
  throw new NotAvailable(
    `no tempering curve of ${steel.name} is held, and the composition formula ends at ${limit} % Cr ` +
      `(${numberText(chromium)} % here)${published}`,
  );
}
