/** One file as the build wrote it. */
interface BuiltFile {
  readonly name: string;
  readonly bytes: number;
  readonly sha256: string;
}

/** files.json of a build: its version, the address it was made for, and its files. */
export interface BuiltSite {
  readonly version: string;
  readonly host: string;
  readonly files: readonly BuiltFile[];
}

/** What the host sent when it was asked for a file. */
export interface Answer {
  readonly name: string;
  /** 0 where nothing came back. */
  readonly status: number;
  readonly header: (name: string) => string;
  readonly sha256: string;
}

/** What was found, as a sentence for whoever looks after the host. */
export interface Finding {
  readonly isFault: boolean;
  readonly sentence: string;
}

const fault = (sentence: string): Finding => ({ isFault: true, sentence });
const fine = (sentence: string): Finding => ({ isFault: false, sentence });

/** Kinds that Excel or a browser insists on, by the end of a name. */
const KINDS: readonly (readonly [end: RegExp, kind: RegExp, wanted: string])[] = [
  [/\.html$/, /^text\/html/, "text/html"],
  [/\.js$/, /^(text|application)\/(x-)?javascript/, "text/javascript"],
  [/\.json$/, /^application\/json/, "application/json"],
  [/\.css$/, /^text\/css/, "text/css"],
];

const MAX_NAMED = 5;

function named(names: readonly string[]): string {
  const more = names.length - MAX_NAMED;
  return `${names.slice(0, MAX_NAMED).join(", ")}${more > 0 ? ` and ${more} more` : ""}`;
}

/** Faults of many files with one cause are one sentence. */
function together(names: readonly string[], sentence: (names: string) => string): Finding[] {
  return names.length === 0 ? [] : [fault(sentence(named(names)))];
}

const present = (answers: readonly Answer[]) => answers.filter(({ status }) => status === 200);

function files({ files: built }: BuiltSite, answers: readonly Answer[]): Finding[] {
  const missing = answers.filter(({ status }) => status !== 200).map(({ name }) => name);
  const due = new Map(built.map(({ name, sha256 }) => [name, sha256]));
  const other = present(answers).filter(({ name, sha256 }) => sha256 !== "" && due.get(name) !== sha256);
  const found = [
    ...together(missing, (names) => `Missing: ${names}. Copy the whole content of dist again.`),
    ...together(
      other.map(({ name }) => name),
      (names) =>
        `Not as built: ${names}. They are of another build, or the host changes them on the way: copy all of dist again and switch off anything that rewrites files.`,
    ),
  ];
  return found.length > 0 ? found : [fine(`All ${built.length} files are there, as they were built.`)];
}

function kinds(answers: readonly Answer[]): Finding[] {
  return KINDS.flatMap(([end, kind, wanted]) => {
    const wrong = present(answers).filter(
      ({ name, header }) => end.test(name) && !kind.test(header("content-type")),
    );
    return together(
      wrong.map(({ name }) => name),
      (names) => `Sent without the content type ${wanted}: ${names}.`,
    );
  });
}

/** Ten minutes: what a host keeps for longer mixes two versions on the day of an update. */
const MAX_KEPT_SECONDS = 600;

function isKept({ name, header }: Answer): boolean {
  if (!/\.(html|json)$/.test(name)) return false;
  const rule = header("cache-control").toLowerCase();
  if (/no-cache|no-store/.test(rule)) return false;
  const seconds = /max-age=(\d+)/.exec(rule)?.[1];
  return seconds === undefined || Number(seconds) > MAX_KEPT_SECONDS;
}

function keeping(answers: readonly Answer[]): Finding[] {
  const kept = present(answers).filter(isKept);
  const found = together(
    kept.map(({ name }) => name),
    (names) =>
      `May be kept by browsers after an update: ${names}. Send "Cache-Control: no-cache" with .html and .json.`,
  );
  return found.length > 0 ? found : [fine("Browsers ask for pages and lists again each time.")];
}

function shared(answers: readonly Answer[]): Finding[] {
  const metadata = answers.find(({ name }) => name === "functions.json");
  if (metadata === undefined) return [];
  const allowed = metadata.header("access-control-allow-origin");
  return allowed === "*"
    ? [fine("Excel on the web may read functions.json.")]
    : [
        fault(
          'Excel on the web cannot read functions.json: send "Access-Control-Allow-Origin: *" with it. Without it every formula shows #NAME? there.',
        ),
      ];
}

const VENDOR = "appsforoffice.microsoft.com";

function framed(answers: readonly Answer[]): Finding[] {
  const page = answers.find(({ name }) => name === "taskpane.html");
  if (page === undefined) return [];
  const options = page.header("x-frame-options");
  const policy = page.header("content-security-policy");
  const found = [
    ...(options === ""
      ? []
      : [
          fault(
            `The host sends "X-Frame-Options: ${options}": Excel then shows an empty pane. Take it away.`,
          ),
        ]),
    ...(/frame-ancestors/.test(policy)
      ? [
          fault(
            `The host's Content-Security-Policy limits who may frame the pane: take frame-ancestors out of it.`,
          ),
        ]
      : []),
    ...(/script-src|default-src/.test(policy) && !policy.includes(VENDOR)
      ? [
          fault(
            `The host's Content-Security-Policy keeps Excel's own script out: let scripts from ${VENDOR} in.`,
          ),
        ]
      : []),
  ];
  return found.length > 0 ? found : [fine("Excel may show the pane in its frame.")];
}

function address({ host }: BuiltSite, at: string): Finding[] {
  const here = at.replace(/\/[^/]*$/, "");
  const isSecure = here.startsWith("https:");
  return [
    ...(isSecure ? [] : [fault(`This address is not https: Excel loads nothing from ${here}.`)]),
    here === host
      ? fine(`The manifest leads here: ${host}.`)
      : fault(
          `The manifest leads to ${host}, these pages are at ${here}: build again with --env host=${here}, or copy them to where it leads.`,
        ),
  ];
}

/**
 * Holds what a host sends against what the build wrote and what Excel needs.
 *
 * @param at - Address of the page that asks, without query.
 */
export function findings(built: BuiltSite, answers: readonly Answer[], at: string): Finding[] {
  return [
    ...address(built, at),
    ...files(built, answers),
    ...kinds(answers),
    ...keeping(answers),
    ...shared(answers),
    ...framed(answers),
  ];
}
