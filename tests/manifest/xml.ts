import { createRequire } from "node:module";

type Parse = (xml: string, options: object) => Promise<Record<string, Parsed>>;

const require = createRequire(import.meta.url);
const { parseStringPromise }: { parseStringPromise: Parse } = require("xml2js");

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

/** What the parser makes of an element when it keeps the order of children. */
interface Parsed {
  readonly "#name": string;
  readonly $?: Record<string, string>;
  readonly $$?: readonly Parsed[];
  readonly _?: string;
}

function nodeFrom(parsed: Parsed): Node {
  const children = (parsed.$$ ?? []).map(nodeFrom);
  const node: Node = {
    name: parsed["#name"],
    attributes: parsed.$ ?? {},
    children,
    text: (parsed._ ?? "").trim(),
    only(name) {
      const found = children.filter((child) => child.name === name);
      const [first] = found;
      if (first === undefined || found.length > 1) throw new Error(`${node.name}: ${found.length} ${name}`);
      return first;
    },
    all: (name) => node.everything().filter((each) => each.name === name),
    everything: () => [node, ...children.flatMap((child) => child.everything())],
  };
  return node;
}

/** Parses a document; refuses one that is not well-formed. */
export async function parseXml(xml: string): Promise<Node> {
  const parsed = await parseStringPromise(xml, {
    explicitChildren: true,
    preserveChildrenOrder: true,
    strict: true,
  });
  const [root] = Object.values(parsed);
  if (root === undefined) throw new Error("an empty document");
  return nodeFrom(root);
}

export function textOf(node: Node): string {
  return node.text;
}
