const { readFileSync } = require("node:fs");
const { resolve } = require("node:path");
const { zipSync } = require("fflate");
const { Compilation, sources } = require("webpack");
const { manifestFor } = require("./hosting.cjs");

/**
 * The unified manifest of the same add-in, taken from manifest.xml so that nothing is told twice. It is a second file:
 * Excel with a perpetual licence reads the XML only. Its functions stand in functions.json, which it names.
 */

const SCHEMA = "https://developer.microsoft.com/json-schemas/teams/v1.29/MicrosoftTeams.schema.json";

const RUNTIME = "SharedRuntime";

/** What stands between the tags of an element that comes once. */
function textOf(xml, name) {
  const found = new RegExp(`<${name}[^>]*>([^<]*)</${name}>`).exec(xml);
  if (found === null) throw new Error(`manifest.xml has no ${name}`);
  return found[1];
}

function attributeOf(xml, name) {
  const found = new RegExp(`<${name} DefaultValue="([^"]*)"`).exec(xml);
  if (found === null) throw new Error(`manifest.xml has no ${name}`);
  return found[1];
}

function resources(xml) {
  const found = xml.matchAll(/<bt:(?:Image|Url|String) id="([^"]+)" DefaultValue="([^"]*)"/g);
  const values = new Map([...found].map(([, id, value]) => [id, value]));
  return (id) => {
    const value = values.get(id);
    if (value === undefined) throw new Error(`manifest.xml defines no ${id}`);
    return value;
  };
}

const shortId = (id) => id.replace("BladeMetallurgy.", "");

/** Buttons and items of the XML: id, the label's and the tip's resource, and the function they run. */
function pressable(xml, element) {
  const found = xml.matchAll(
    new RegExp(
      `<${element} (?:xsi:type="Button" )?id="([^"]+)">\\s*<Label resid="([^"]+)"/>\\s*<Supertip>.*?<Description resid="([^"]+)"/>.*?<Action xsi:type="(\\w+)">\\s*(?:<FunctionName>(\\w+))?`,
      "gs",
    ),
  );
  return [...found].map(([, id, label, tip, action, run]) => ({
    id,
    label,
    tip,
    actionId: action === "ShowTaskpane" ? "ShowPane" : run,
  }));
}

/**
 * @param {string} xml - The manifest of the address that is built for.
 * @returns {object} The unified manifest.
 */
function unifiedManifest(xml) {
  const of = resources(xml);
  const [major, minor, patch] = textOf(xml, "Version").split(".");
  const icons = [16, 32, 80].map((size) => ({ size, url: of(`Icon.${size}`) }));
  const press = (type, { id, label, tip, actionId }) => ({
    id: shortId(id),
    type,
    label: of(label),
    icons,
    supertip: { title: of(label), description: of(tip) },
    actionId,
  });
  const sets = [...xml.matchAll(/<Set Name="([^"]+)" MinVersion="([^"]+)"/g)];
  const requirements = {
    scopes: ["workbook"],
    capabilities: sets.map(([, name, minVersion]) => ({ name, minVersion })),
  };
  const ribbon = xml.slice(xml.indexOf('"PrimaryCommandSurface"'), xml.indexOf('"ContextMenu"'));
  const [show] = pressable(ribbon.slice(0, ribbon.indexOf('xsi:type="Menu"')), "Control");
  const items = pressable(ribbon, "Item");
  const [explain] = pressable(xml.slice(xml.indexOf('"ContextMenu"')), "Control");
  const commands = [...new Set([...items, explain].map(({ actionId }) => actionId))];
  return {
    $schema: SCHEMA,
    manifestVersion: "1.29",
    id: textOf(xml, "Id"),
    version: `${major}.${minor}.${patch}`,
    name: { short: "Blade Metallurgy", full: attributeOf(xml, "DisplayName") },
    description: {
      short: "Worksheet functions and a pane for planning a run of blades.",
      full: attributeOf(xml, "Description"),
    },
    developer: {
      name: textOf(xml, "ProviderName").slice(0, 32),
      websiteUrl: of("GetStarted.LearnMoreUrl"),
      privacyUrl: attributeOf(xml, "SupportUrl").replace("support.html", "privacy.html"),
      termsOfUseUrl: attributeOf(xml, "SupportUrl"),
    },
    icons: { color: "color.png", outline: "outline.png" },
    accentColor: "#3D4F5C",
    localizationInfo: { defaultLanguageTag: "en-gb", additionalLanguages: [] },
    authorization: {
      permissions: { resourceSpecific: [{ name: "Document.ReadWrite.User", type: "Delegated" }] },
    },
    validDomains: [new URL(of("Taskpane.Url")).host],
    extensions: [
      {
        requirements,
        runtimes: [
          {
            id: RUNTIME,
            type: "general",
            lifetime: "long",
            code: { page: of("Taskpane.Url") },
            actions: [
              { id: "ShowPane", type: "openPage", view: "pane" },
              ...commands.map((id) => ({ id, type: "executeFunction" })),
            ],
            customFunctions: { namespace: { id: of("Functions.Namespace"), name: of("Functions.Namespace") }, metadataUrl: of("Functions.Metadata.Url") },
          },
        ],
        ribbons: [
          {
            contexts: ["default"],
            tabs: [
              {
                builtInTabId: "TabHome",
                groups: [
                  {
                    id: "Group",
                    label: of("Group.Label"),
                    icons,
                    controls: [
                      press("button", show),
                      {
                        id: "Menu",
                        type: "menu",
                        label: of("Menu.Label"),
                        icons,
                        supertip: { title: of("Menu.Label"), description: of("Menu.Tip") },
                        items: items.map((item) => press("menuItem", item)),
                      },
                    ],
                  },
                ],
              },
            ],
          },
        ],
        contextMenus: [{ menus: [{ entryPoint: "cell", controls: [press("button", explain)] }] }],
      },
    ],
  };
}

/** Colour and outline of the app package; the schema wants 192 and 32 pixels. */
const PACKAGE_ICONS = { "color.png": "assets/icon-192.png", "outline.png": "assets/icon-outline-32.png" };

/** Adds the unified manifest as an app package: a .zip of the manifest and its two icons. */
class UnifiedManifestPlugin {
  constructor({ host }) {
    this.host = host;
  }

  apply(compiler) {
    const name = "UnifiedManifestPlugin";
    compiler.hooks.thisCompilation.tap(name, (compilation) => {
      const stage = Compilation.PROCESS_ASSETS_STAGE_ADDITIONS;
      compilation.hooks.processAssets.tap({ name, stage }, () => {
        const root = compiler.context;
        const xml = readFileSync(resolve(root, "manifest/manifest.xml"), "utf8");
        const text = `${JSON.stringify(unifiedManifest(manifestFor(xml, this.host)), null, 1)}\n`;
        const icons = Object.entries(PACKAGE_ICONS).map(([to, from]) => [to, readFileSync(resolve(root, from))]);
        // A fixed day, so that the same sources give the same bytes.
        const files = { "manifest.json": Buffer.from(text), ...Object.fromEntries(icons) };
        const zip = zipSync(files, { mtime: new Date(2000, 0, 1) });
        const emit = (file, content) =>
          compilation.emitAsset(file, new sources.RawSource(content), { minimized: true });
        emit("unified/manifest.json", text);
        emit("unified/app-package.zip", Buffer.from(zip));
      });
    });
  }
}

module.exports = { UnifiedManifestPlugin, unifiedManifest };
