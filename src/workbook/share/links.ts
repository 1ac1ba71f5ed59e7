const RELATIONSHIPS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const ROOT_TAG = /<(?![?!])[^>]*>/;

/**
 * The attribute that names a link, by the prefix that the part has for it. Simple readers look for that very
 * prefix; it is declared on the spot only where the part has none.
 */
export function linkAttribute(xml: string, id: string): string {
  const [root = ""] = ROOT_TAG.exec(xml) ?? [];
  const declared = [...root.matchAll(/xmlns:([\w.-]+)\s*=\s*["']([^"']*)["']/g)];
  const prefix = declared.find(([, , address]) => address === RELATIONSHIPS)?.[1];
  return prefix === undefined ? `xmlns:r="${RELATIONSHIPS}" r:id="${id}"` : `${prefix}:id="${id}"`;
}
