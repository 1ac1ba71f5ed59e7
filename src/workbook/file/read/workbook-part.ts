import { FileRefusal } from "../package/file-refusal";
import type { Package } from "../package/package";
import { relationshipsOf } from "../package/relationships";
import { walkXml } from "../package/xml";

/** A worksheet as the workbook lists it. */
export interface ListedSheet {
  readonly name: string;
  /** Name of the part that holds its cells. */
  readonly part: string;
  /** Place among all sheets, sheets that hold only a chart counted too. */
  readonly position: number;
  readonly isHidden: boolean;
}

export interface DefinedName {
  readonly name: string;
  readonly formula: string;
  /** Place of the sheet it belongs to; `undefined` where it holds for the whole workbook. */
  readonly sheet: number | undefined;
  /** The whole element in the part's text. */
  readonly start: number;
  readonly end: number;
}

/** What the workbook's main part says. */
export interface WorkbookPart {
  readonly name: string;
  /** Sheets that hold cells. */
  readonly sheets: readonly ListedSheet[];
  /** Names of all sheets, those that hold only a chart too. */
  readonly listed: readonly string[];
  readonly names: readonly DefinedName[];
  /** True where dates count from 1904. */
  readonly from1904: boolean;
  readonly sharedStrings: string | undefined;
}

type Raw = { readonly attributes: Readonly<Record<string, string>> };

function relationId({ attributes }: Raw): string {
  const key = Object.keys(attributes).find((name) => /:id$/.test(name));
  return key === undefined ? "" : (attributes[key] ?? "");
}

function readMain(name: string, xml: string) {
  const sheets: Raw[] = [];
  const names: DefinedName[] = [];
  let open: Omit<DefinedName, "end" | "formula"> | undefined;
  let formula = "";
  let from1904 = false;
  walkXml(name, xml, {
    open({ name: element, attributes, start }) {
      if (element === "sheet") sheets.push({ attributes });
      if (element === "workbookPr") from1904 = /^(?:1|true)$/.test(attributes.date1904 ?? "");
      if (element !== "definedName") return;
      const { name: defined = "", localSheetId } = attributes;
      open = { name: defined, sheet: localSheetId === undefined ? undefined : Number(localSheetId), start };
      formula = "";
    },
    text(text) {
      if (open) formula += text;
    },
    close(element, _, end) {
      if (element !== "definedName" || !open) return;
      names.push({ ...open, formula, end });
      open = undefined;
    },
  });
  return { sheets, names, from1904 };
}

/** Reads the main part of a workbook. @throws FileRefusal where it lists no worksheet. */
export function readWorkbookPart(file: Package, main: string): WorkbookPart {
  const { sheets, names, from1904 } = readMain(main, file.text(main));
  const links = relationshipsOf(file, main);
  const listed = sheets.flatMap((raw, position): ListedSheet[] => {
    const link = links.find(({ id }) => id === relationId(raw));
    if (link?.kind !== "worksheet" || link.part === undefined) return [];
    const { name = "", state = "visible" } = raw.attributes;
    return [{ name, part: link.part, position, isHidden: state !== "visible" }];
  });
  if (listed.length === 0) throw new FileRefusal("The workbook holds no worksheet.");
  const sharedStrings = links.find(({ kind }) => kind === "sharedStrings")?.part;
  return {
    name: main,
    sheets: listed,
    listed: sheets.map(({ attributes }) => attributes.name ?? ""),
    names,
    from1904,
    sharedStrings,
  };
}
