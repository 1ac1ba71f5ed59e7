import { element, fill } from "../parts/dom";
import { type Answer, type BuiltSite, type Finding, findings } from "./findings";
import "./check.css";

/** Questions on their way at a time: a host answers a few at once without complaint. */
const AT_ONCE = 8;

async function digest(bytes: ArrayBuffer): Promise<string> {
  // Over http there is no digest, and the address is a fault of its own.
  if (crypto.subtle === undefined) return "";
  const hash = await crypto.subtle.digest("SHA-256", bytes);
  return [...new Uint8Array(hash)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

async function asked(name: string): Promise<Answer> {
  try {
    const response = await fetch(name, { cache: "no-store" });
    const sha256 = response.ok ? await digest(await response.arrayBuffer()) : "";
    return { name, status: response.status, header: (key) => response.headers.get(key) ?? "", sha256 };
  } catch {
    return { name, status: 0, header: () => "", sha256: "" };
  }
}

async function allAsked(names: readonly string[], progress: (done: number) => void): Promise<Answer[]> {
  const answers: Answer[] = [];
  for (let from = 0; from < names.length; from += AT_ONCE) {
    answers.push(...(await Promise.all(names.slice(from, from + AT_ONCE).map(asked))));
    progress(answers.length);
  }
  return answers;
}

async function builtSite(): Promise<BuiltSite | null> {
  try {
    const response = await fetch("files.json", { cache: "no-store" });
    return response.ok ? ((await response.json()) as BuiltSite) : null;
  } catch {
    return null;
  }
}

function listOf(found: readonly Finding[]): HTMLElement {
  const word = ({ isFault }: Finding) => element("strong", {}, isFault ? "To mend: " : "In order: ");
  const items = found.map((one) =>
    element("li", { class: one.isFault ? "fault" : "" }, word(one), one.sentence),
  );
  return element("ul", {}, ...items);
}

function verdict({ version }: BuiltSite, faults: number): string {
  if (faults === 0) return `Version ${version}: nothing is missing. Excel itself has still to be tried.`;
  return faults === 1
    ? `Version ${version}: 1 thing to mend.`
    : `Version ${version}: ${faults} things to mend.`;
}

async function check(root: HTMLElement): Promise<void> {
  const built = await builtSite();
  if (built === null) {
    fill(
      root,
      element("p", { class: "fault" }, "files.json is missing: copy the whole content of dist here."),
    );
    return;
  }
  const names = built.files.map(({ name }) => name);
  const progress = (done: number) => fill(root, `${done} of ${names.length} files asked for …`);
  const found = findings(built, await allAsked(names, progress), location.origin + location.pathname);
  const faults = found.filter(({ isFault }) => isFault);
  fill(root, element("h2", {}, verdict(built, faults.length)), listOf(found));
}

const root = document.getElementById("found");
if (root !== null) void check(root);
