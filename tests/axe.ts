import AxeBuilder from "@axe-core/playwright";
import type { Page } from "playwright-core";

/** Rules that ask for colours; the others read names, roles and structure, which no theme changes. */
const OF_COLOURS = ["color-contrast", "link-in-text-block"];

export interface Looked {
  /** Left out: a part that is checked otherwise. */
  readonly exclude?: string;
  /** In further themes of a page that was looked at whole. */
  readonly coloursOnly?: boolean;
}

/**
 * What axe finds on a page, a line each. The pages have no frames, so that axe may work out its findings in the page
 * itself; by default it opens another one for that each time, which took most of the time.
 */
export async function violations(
  page: Page,
  { exclude, coloursOnly = false }: Looked = {},
): Promise<string[]> {
  const axe = new AxeBuilder({ page }).options({ resultTypes: ["violations"] }).setLegacyMode(true);
  if (exclude !== undefined) axe.exclude(exclude);
  if (coloursOnly) axe.withRules(OF_COLOURS);
  const { violations: found } = await axe.analyze();
  return found.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(" ")}`);
}
