const ENTITIES: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" };

const unescaped = (xml: string) =>
  xml.replace(/&(amp|lt|gt|quot|apos);/g, (_, name: string) => ENTITIES[name] ?? "");

const PLAIN_NAME = /^[\p{L}_][\p{L}\p{N}_.]*$/u;

/** Tells whether a text, plain or as XML, has a reference to one of these sheets. */
export function mentionsOf(sheets: readonly string[]): (text: string) => boolean {
  const written = sheets.map((name) => name.toLowerCase());
  const quoted = written.map((name) => `'${name.replaceAll("'", "''")}'!`);
  const plain = written.filter((name) => PLAIN_NAME.test(name)).map((name) => `${name}!`);
  const isStart = (text: string, at: number) => at === 0 || !/[\p{L}\p{N}_.]/u.test(text[at - 1] ?? "");
  return (given) => {
    const text = unescaped(given).toLowerCase();
    if (quoted.some((name) => text.includes(name))) return true;
    return plain.some((name) => {
      let at = text.indexOf(name);
      while (at >= 0 && !isStart(text, at)) at = text.indexOf(name, at + 1);
      return at >= 0;
    });
  };
}
