import { readLiveWorkbook } from "../../workbook/file/read/live-workbook";
import type { Paper, WorkbookData } from "../../workbook/model/workbook-data";
import { demoWorkbook } from "../../workbook/sheets/demo/demo-workbook";
import { shownWorkbook } from "../../workbook/sheets/parts/workbook-of-model";

/** The invented run that the page opens with. */
export const demoData = (): WorkbookData => shownWorkbook(demoWorkbook());

async function template() {
  const [{ planningTemplate }, { carriedOver }] = await Promise.all([
    import(/* webpackChunkName: "template" */ "../../workbook/sheets/planning-template"),
    import(/* webpackChunkName: "template" */ "../../workbook/sheets/carried-over"),
  ]);
  return { carriedOver, planningTemplate };
}

/** Regions that print on Letter (Unicode CLDR, paperSize US-Letter; from memory). */
const ON_LETTER = ["BZ", "CA", "CL", "CO", "CR", "GT", "MX", "NI", "PA", "PH", "PR", "SV", "US", "VE"];

/** The paper of the reader's region, by the first language that names one. */
export function paperOf(languages: readonly string[]): Paper {
  const [region] = languages.flatMap((language) => /-([A-Z]{2})\b/.exec(language)?.[1] ?? []);
  return region !== undefined && ON_LETTER.includes(region) ? "letter" : "A4";
}

/** A new run: the planning template with empty lines. It is large, so it is loaded apart. */
export async function blankData(): Promise<WorkbookData> {
  const { planningTemplate } = await template();
  return shownWorkbook(planningTemplate(undefined, undefined, undefined, paperOf(navigator.languages)));
}

/** The plan of a file with room for so many lines: what was typed stands in it, worked out anew. */
export async function largerData(plan: Uint8Array, lines: number): Promise<WorkbookData> {
  const { carriedOver, planningTemplate } = await template();
  const room = planningTemplate(undefined, lines, undefined, paperOf(navigator.languages));
  return shownWorkbook(carriedOver(room, readLiveWorkbook(plan)));
}

/** Fetches the template ahead, so that a new run can be begun without the network. Where it fails, asking tries again. */
export function fetchTemplateAhead(): void {
  template().catch(() => undefined);
}
