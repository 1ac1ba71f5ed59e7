import installMac from "./articles/install-mac.html?raw";
import installOrganisation from "./articles/install-organisation.html?raw";
import installWeb from "./articles/install-web.html?raw";
import installWindows from "./articles/install-windows.html?raw";
import privacy from "./articles/privacy.html?raw";
import support from "./articles/support.html?raw";
import upgrading from "./articles/upgrading.html?raw";
import glossary from "./glossary.json";
import { escaped, type HelpPage, table } from "./html";
import { upgradeNotes } from "./upgrade";

/** Pages that are written by hand. */
export const ARTICLES: readonly HelpPage[] = [
  { file: "install-windows.html", title: "Install in Excel on Windows", body: installWindows },
  { file: "install-mac.html", title: "Install in Excel on a Mac", body: installMac },
  { file: "install-web.html", title: "Install in Excel on the web", body: installWeb },
  {
    file: "install-organisation.html",
    title: "Host and deploy for an organisation",
    body: installOrganisation,
  },
  { file: "upgrading.html", title: "A new version", body: `${upgrading}\n${upgradeNotes()}` },
  { file: "support.html", title: "Support", body: support },
  { file: "privacy.html", title: "Privacy", body: privacy },
];

/** Terms and symbols in the order of the alphabet. */
export function glossaryPage(): HelpPage {
  const rows = glossary.rows.map((row) => row.map(escaped));
  return {
    file: "glossary.html",
    title: "Terms and symbols",
    body: table(glossary.title, glossary.columns, rows),
  };
}
