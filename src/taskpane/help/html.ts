/** Text made safe to stand between tags or in a quoted attribute. */
export function escaped(text: string): string {
  return text
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");
}

/** Formulas are set apart and never broken by a translator. */
export function code(text: string): string {
  return `<code translate="no">${escaped(text)}</code>`;
}

/** A table with a head row; cells are markup already. */
export function table(
  caption: string,
  heads: readonly string[],
  rows: readonly (readonly string[])[],
): string {
  const head = heads.map((text) => `<th scope="col">${escaped(text)}</th>`).join("");
  const body = rows.map((row) => `<tr>${row.map((cell) => `<td>${cell}</td>`).join("")}</tr>`).join("\n");
  return `<div class="wide" role="region" aria-label="${escaped(caption)}" tabindex="0"><table>
<caption>${escaped(caption)}</caption>
<thead><tr>${head}</tr></thead>
<tbody>
${body}
</tbody></table></div>`;
}

export interface HelpPage {
  /** File name within the help folder. */
  readonly file: string;
  readonly title: string;
  /** Markup of the page below its heading. */
  readonly body: string;
}

/** A whole file. Nothing in it needs a script, so that it reads the same anywhere, on paper too. */
export function document({ title, body, file }: HelpPage): string {
  const home =
    file === "index.html" ? "" : '<nav aria-label="Help"><a href="index.html">All help</a></nav>\n';
  return `<!doctype html>
<html lang="en-GB">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'self'; img-src 'self'; base-uri 'none'; form-action 'none'">
<title>${escaped(title)} · Blade Metallurgy</title>
<link rel="stylesheet" href="help.css">
</head>
<body>
${home}<main>
<h1>${escaped(title)}</h1>
${body}
</main>
<footer><p>Estimates choose a starting point: test a coupon of your own heat. Nothing here is safety or legal advice; follow local codes and licensed practice.</p></footer>
</body>
</html>
`;
}
