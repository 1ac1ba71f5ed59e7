/** Where manifest.xml, as it stands in the repository, looks for the pages. */
const DEVELOPMENT_HOST = "https://localhost:3000";

/**
 * What tells a released add-in from the one in development, so that both can be in one Excel: two add-ins with one Id
 * replace each other, two with one namespace answer #REF!.
 */
const DEVELOPMENT = {
  id: "d7c5d4ce-50c9-4007-b886-af73defc1da9",
  namespace: "BLADEDEV",
  name: "Blade Metallurgy (development)",
  typed: "=BLADEDEV.",
};
const RELEASE = {
  id: "f5c1a0de-6d0c-4b5e-9a55-7b1f0d2c83a4",
  namespace: "BLADE",
  name: "Blade Metallurgy",
  typed: "=BLADE.",
};

/** Stands for an address in a build that was not told one; reserved by RFC 2606, so nobody can own it. */
const PLACEHOLDER_HOST = "https://blade-metallurgy.example";

/**
 * The address the built pages will be served from.
 *
 * @param {string | undefined} given - `--env host=` or `ADDIN_HOST`: https, with or without a path, without a query.
 * @throws Error with what is accepted.
 */
function productionHost(given) {
  if (given === undefined || given === "") return PLACEHOLDER_HOST;
  const isAddress = URL.canParse(given) && new URL(given).protocol === "https:" && !/[?#]/.test(given);
  if (!isAddress) {
    throw new Error(
      `the host is "${given}": give the https address of the folder that will hold the pages`,
    );
  }
  return given.replace(/\/+$/, "");
}

/** The manifest of `host`: its addresses, and away from the development server the released add-in's Id and names. */
function manifestFor(xml, host) {
  if (host === DEVELOPMENT_HOST) return xml;
  return xml
    .replaceAll(DEVELOPMENT_HOST, host)
    .replace(DEVELOPMENT.id, RELEASE.id)
    .replace(DEVELOPMENT.typed, RELEASE.typed)
    .replaceAll(`"${DEVELOPMENT.namespace}"`, `"${RELEASE.namespace}"`)
    .replaceAll(DEVELOPMENT.name, RELEASE.name);
}

module.exports = { DEVELOPMENT, DEVELOPMENT_HOST, PLACEHOLDER_HOST, RELEASE, manifestFor, productionHost };
