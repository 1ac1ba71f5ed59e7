import { catalogue, NAMESPACE } from "../../functions/catalogue";
import { TOPICS } from "../../functions/topics";
import { ARTICLES, glossaryPage } from "./articles";
import { functionPage } from "./function-page";
import { GUIDE_STEEL, guidePage, guideStations } from "./guide";
import style from "./help.css?raw";
import { document, escaped, type HelpPage } from "./html";
import { curvePicture, profilePicture } from "./pictures";

function link({ file, title }: HelpPage): string {
  return `<li><a href="${file}">${escaped(title)}</a></li>`;
}

function topicList(topic: string): string {
  const lines = catalogue
    .filter((fn) => fn.topic === topic)
    .map(
      ({ name, summary }) => `<li><a href="${name}.html">${NAMESPACE}.${name}</a>: ${escaped(summary)}</li>`,
    );
  return `<h2>${escaped(topic)}</h2>\n<ul>\n${lines.join("\n")}\n</ul>`;
}

function indexPage(articles: readonly HelpPage[]): HelpPage {
  const body = [`<ul>\n${articles.map(link).join("\n")}\n</ul>`, ...TOPICS.map(topicList)].join("\n");
  return { file: "index.html", title: "Help", body };
}

/** Every file of the help folder by name: pages, drawings, style. Made by the build from the declarations. */
export function helpFiles(): Readonly<Record<string, string>> {
  const articles = [guidePage(), glossaryPage(), ...ARTICLES];
  const pages = [indexPage(articles), ...articles, ...catalogue.map(functionPage)];
  return {
    ...Object.fromEntries(pages.map((page) => [page.file, document(page)])),
    "help.css": style,
    "temper-curve.svg": curvePicture(GUIDE_STEEL),
    "profile.svg": profilePicture(guideStations()),
  };
}
