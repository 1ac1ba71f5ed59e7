import { version } from "../../package.json";
import { NAMESPACE } from "../../src/functions/namespace";
import { COMMANDS } from "../../src/host/commands";
import { fromRoot } from "./from-root";
import { type Node, parseXml } from "./xml";

interface Names {
  readonly id: string;
  readonly namespace: string;
}

const { DEVELOPMENT, RELEASE }: { DEVELOPMENT: Names; RELEASE: Names } = fromRoot("./manifest/hosting.cjs");

/** Requirement sets and the least version of each: long-lived runtime, and errors that carry a sentence. */
const SETS: Readonly<Record<string, string>> = { SharedRuntime: "1.1", CustomFunctionsRuntime: "1.3" };

/** "How to find the proper order of manifest elements" of the Office add-in documentation. */
const ORDER: Readonly<Record<string, readonly string[]>> = {
  OfficeApp: [
    "Id",
    "Version",
    "ProviderName",
    "DefaultLocale",
    "DisplayName",
    "Description",
    "IconUrl",
    "HighResolutionIconUrl",
    "SupportUrl",
    "AppDomains",
    "Hosts",
    "Requirements",
    "DefaultSettings",
    "Permissions",
    "VersionOverrides",
  ],
  VersionOverrides: ["Hosts", "Resources"],
  Host: ["Runtimes", "AllFormFactors", "DesktopFormFactor"],
  DesktopFormFactor: ["GetStarted", "FunctionFile", "ExtensionPoint"],
  Resources: ["bt:Images", "bt:Urls", "bt:ShortStrings", "bt:LongStrings"],
  Control: ["Label", "Supertip", "Icon", "Action", "Items"],
  Item: ["Label", "Supertip", "Icon", "Action"],
};
const FUNCTIONS_ORDER = ["Script", "Page", "Metadata", "Namespace"];

/** Letters that Office allows. */
const MAX_LETTERS = { "bt:ShortStrings": 125, "bt:LongStrings": 250, id: 32, description: 250 } as const;

const attribute = (node: Node, name: string) => node.attributes[name] ?? "";

/** Every fault of one kind, as a sentence. */
type Rule = (root: Node) => string[];

/** Elements whose order is not told may stand as they do. */
function inOrder(node: Node, order: readonly string[] | undefined): string[] {
  if (order === undefined) return [];
  const all = node.children.map(({ name }) => name);
  // One of a kind may follow another, as points of extension do.
  const names = all.filter((name, at) => name !== all[at - 1]);
  const unknown = names.filter((name) => !order.includes(name));
  const due = order.filter((name) => names.includes(name));
  if (unknown.length > 0) return [`${node.name}: ${unknown.join(", ")} does not belong there`];
  return names.join() === due.join()
    ? []
    : [`${node.name}: its elements stand in another order than ${due.join(", ")}`];
}

const elementOrder: Rule = (root) => {
  const overrides = root.only("VersionOverrides");
  const inOverrides = overrides.everything().flatMap((node) => inOrder(node, ORDER[node.name]));
  const functions = overrides.only("Hosts").only("Host").only("AllFormFactors").only("ExtensionPoint");
  return [...inOrder(root, ORDER.OfficeApp), ...inOverrides, ...inOrder(functions, FUNCTIONS_ORDER)];
};

const oneRuntime: Rule = (root) => {
  const host = root.only("VersionOverrides").only("Hosts").only("Host");
  const forms = host.only("DesktopFormFactor");
  const runtime = host.only("Runtimes").only("Runtime");
  const page = host.only("AllFormFactors").only("ExtensionPoint").only("Page").only("SourceLocation");
  const panes = forms
    .all("Action")
    .filter((action) => attribute(action, "xsi:type") === "ShowTaskpane")
    .map((action) => action.only("SourceLocation"));
  const resids = new Set(
    [runtime, page, forms.only("FunctionFile"), ...panes].map((at) => attribute(at, "resid")),
  );
  return [
    ...(attribute(runtime, "lifetime") === "long" ? [] : ["Runtime: its lifetime is not long"]),
    ...(panes.length > 0 ? [] : ["DesktopFormFactor: no action shows the pane"]),
    ...(resids.size === 1 ? [] : [`runtime, page, function file and pane differ: ${[...resids].join(", ")}`]),
    ...root.all("TaskpaneId").map(() => "an action with a TaskpaneId would open a second pane"),
  ];
};

/** Buttons that run code, and the code that is there. */
const commands: Rule = (root) => {
  const named = root
    .only("VersionOverrides")
    .all("FunctionName")
    .map(({ text }) => text);
  return [
    ...named.filter((name) => !isCommand(name)).map((name) => `no code is called ${name}`),
    ...COMMANDS.filter((name) => !named.includes(name)).map((name) => `no button calls ${name}`),
  ];
};

const isCommand = (name: string) => COMMANDS.some((command) => command === name);

const requirements: Rule = (root) => {
  const asked = new Map(
    root
      .only("Requirements")
      .all("Set")
      .map((set) => [attribute(set, "Name"), attribute(set, "MinVersion")]),
  );
  return Object.entries(SETS).flatMap(([name, least]) => {
    if (!asked.has(name)) return [`Requirements: ${name} is not asked for`];
    return asked.get(name) === least ? [] : [`Requirements: ${name} ${asked.get(name)}, not ${least}`];
  });
};

const LISTS = ["bt:Images", "bt:Urls", "bt:ShortStrings", "bt:LongStrings"] as const;

const resources: Rule = (root) => {
  const overrides = root.only("VersionOverrides");
  const defined = LISTS.flatMap((list) => overrides.only("Resources").only(list).children).map((at) =>
    attribute(at, "id"),
  );
  const used = new Set(overrides.everything().flatMap(({ attributes }) => attributes.resid ?? []));
  return [
    ...defined.filter((id, at) => defined.indexOf(id) !== at).map((id) => `${id} is defined twice`),
    ...defined.filter((id) => !used.has(id)).map((id) => `${id} is defined and not used`),
    ...[...used].filter((id) => !defined.includes(id)).map((id) => `${id} is used and not defined`),
    ...defined
      .filter((id) => id.length > MAX_LETTERS.id)
      .map((id) => `${id} is longer than ${MAX_LETTERS.id} letters`),
  ];
};

function tooLong(node: Node, most: number): string[] {
  const { length } = attribute(node, "DefaultValue");
  return length <= most
    ? []
    : [`${node.name} ${attribute(node, "id")}: ${length} letters, ${most} are allowed`];
}

const strings: Rule = (root) => {
  const kept = root.only("VersionOverrides").only("Resources");
  const lists = (["bt:ShortStrings", "bt:LongStrings"] as const).flatMap((list) =>
    kept.only(list).children.flatMap((node) => tooLong(node, MAX_LETTERS[list])),
  );
  return [...lists, ...tooLong(root.only("Description"), MAX_LETTERS.description)];
};

const names: Rule = (root) => {
  const overrides = root.only("VersionOverrides");
  const point = overrides.only("Hosts").only("Host").only("AllFormFactors").only("ExtensionPoint");
  const id = attribute(point.only("Namespace"), "resid");
  const namespace = overrides
    .only("Resources")
    .everything()
    .find((node) => node.attributes.id === id);
  const stated = root.only("Version").text;
  const isDevelopment = root.only("Id").text === DEVELOPMENT.id;
  const due = isDevelopment ? DEVELOPMENT.namespace : NAMESPACE;
  return [
    ...(isDevelopment || root.only("Id").text === RELEASE.id ? [] : ["the Id is neither of the two"]),
    ...(namespace?.attributes.DefaultValue === due ? [] : [`the namespace is not ${due}`]),
    ...(stated === `${version}.0` ? [] : [`the version is ${stated}, that of package.json ${version}.0`]),
  ];
};

/** Every address of a manifest. */
export function addresses(root: Node): string[] {
  return root.everything().flatMap(({ attributes }) => {
    const value = attributes.DefaultValue ?? "";
    return /^https?:/.test(value) ? [value] : [];
  });
}

const secure: Rule = (root) => {
  const given = addresses(root);
  const hosts = new Set(given.map((address) => new URL(address).origin));
  return [
    ...given.filter((address) => !address.startsWith("https://")).map((address) => `${address} is not https`),
    ...(hosts.size === 1 ? [] : [`addresses lead to ${hosts.size} hosts: ${[...hosts].join(", ")}`]),
  ];
};

const RULES: readonly Rule[] = [
  elementOrder,
  oneRuntime,
  commands,
  requirements,
  resources,
  strings,
  names,
  secure,
];

/** What Office would refuse in a manifest or read otherwise than meant, as sentences; empty where there is nothing. */
export function manifestFaults(xml: string): string[] {
  const root = parseXml(xml);
  return RULES.flatMap((rule) => rule(root));
}
