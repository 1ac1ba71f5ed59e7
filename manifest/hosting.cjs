/** Where manifest.xml, as it stands in the repository, looks for the pages. */
const DEVELOPMENT_HOST = "https://localhost:3000";

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

/** The manifest with every address of the development server turned into one of `host`. */
function manifestFor(xml, host) {
  return xml.replaceAll(DEVELOPMENT_HOST, host);
}

module.exports = { DEVELOPMENT_HOST, PLACEHOLDER_HOST, manifestFor, productionHost };
