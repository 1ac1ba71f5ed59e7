import { SaxesParser } from "saxes";

/** An element of a parsed document, its children in the order of the file. */
export interface Node {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly Node[];
  readonly text: string;
  /** The one child of a name; throws where there is none or several. */
  only(name: string): Node;
  /** Every element of a name below this one. */
  all(name: string): Node[];
  /** This element and all below it. */
  everything(): Node[];
}

class Element implements Node {
  readonly children: Element[] = [];
  written = "";

  constructor(
    readonly name: string,
    readonly attributes: Readonly<Record<string, string>>,
  ) {}

  get text(): string {
    return this.written.trim();
  }

  only(name: string): Node {
    const found = this.children.filter((child) => child.name === name);
    const [first] = found;
    if (first === undefined || found.length > 1) throw new Error(`${this.name}: ${found.length} ${name}`);
    return first;
  }

  all(name: string): Node[] {
    return this.everything().filter((each) => each.name === name);
  }

  everything(): Node[] {
    return [this, ...this.children.flatMap((child) => child.everything())];
  }
}

/** Parses a document; refuses one that is not well-formed. */
export function parseXml(xml: string): Node {
  const parser = new SaxesParser();
  const document = new Element("", {});
  const open = [document];
  parser.on("error", (fault) => {
    throw fault;
  });
  parser.on("opentag", ({ name, attributes }) => {
    const element = new Element(name, attributes);
    open.at(-1)?.children.push(element);
    open.push(element);
  });
  parser.on("text", (words) => {
    const element = open.at(-1);
    if (element !== undefined) element.written += words;
  });
  parser.on("closetag", () => open.pop());
  parser.write(xml).close();
  const [root] = document.children;
  if (root === undefined) throw new Error("an empty document");
  return root;
}
