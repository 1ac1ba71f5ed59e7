import { handMade, partsOf } from "./hand-made";

const LINK = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const MAIN = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"';

/** Places in an .xlsx file where a word or a figure may stand, each with a marker of its own, by what it is. */
const MARKS = new Map<string, string>();

function mark(place: string): string {
  const word = `Zq${String(MARKS.size + 1).padStart(3, "0")}x`;
  MARKS.set(word, place);
  return word;
}

/** A figure that stands for a marker: no other figure of the file has its digits. */
function figure(place: string): string {
  const digits = `7.${String(310_031 + MARKS.size * 101)}`;
  MARKS.set(digits, place);
  return digits;
}

const text = (cell: string, words: string, style = "") =>
  `<c r="${cell}"${style} t="inlineStr"><is><t>${words}</t></is></c>`;
const row = (number: number, cells: string, more = "") => `<row r="${number}"${more}>${cells}</row>`;

/** What may travel: the words and figures of the shared sheet that can be read there. */
export const TRAVELS = {
  value: "kept value",
  result: "kept result",
  format: "pieces kept",
} as const;

const STYLES = `<styleSheet ${MAIN}><numFmts count="3"><numFmt numFmtId="170" formatCode="0 &quot;${TRAVELS.format}&quot;"/><numFmt numFmtId="171" formatCode="0 &quot;${mark("number format of a sheet left out")}&quot;"/><numFmt numFmtId="172" formatCode=";;;"/></numFmts>
<fonts count="3"><font><name val="Calibri"/></font><font><color rgb="FFFFFFFF"/><name val="Calibri"/></font><font><name val="${mark("font of no shared cell")}"/></font></fonts>
<fills count="2"><fill/><fill/></fills><borders count="1"><border/></borders><cellStyleXfs count="1"><xf/></cellStyleXfs>
<cellXfs count="5"><xf numFmtId="0" fontId="0"/><xf numFmtId="170" fontId="0"/><xf numFmtId="171" fontId="0"/><xf numFmtId="172" fontId="0"/><xf numFmtId="0" fontId="1"/></cellXfs>
<cellStyles count="1"><cellStyle name="${mark("name of a cell style")}" xfId="0"/></cellStyles>
<dxfs count="1"><dxf><numFmt numFmtId="180" formatCode="0&quot;${mark("number format of a rule")}&quot;"/></dxf></dxfs>
<tableStyles count="1"><tableStyle name="${mark("name of a table style")}"/></tableStyles></styleSheet>`;

const PLAN =
  `<!-- ${mark("comment in the XML")} --><?note ${mark("processing instruction")}?>` +
  `<sheetPr codeName="${mark("code name of a sheet")}"/>` +
  `<cols><col min="5" max="5" hidden="1"/></cols><sheetData>` +
  row(
    1,
    text("A1", TRAVELS.value) +
      `<c r="B1"><f>Costs!A2*${figure("constant in a formula that reads a sheet left out")}</f><v>1</v></c>` +
      `<c r="C1" t="str"><f>LOWER("KEPT RESULT")</f><v>${TRAVELS.result}</v></c><c r="D1" s="1"><v>4</v></c>`,
  ) +
  row(2, text("A2", mark("cell of a hidden row")), ' hidden="1"') +
  row(
    3,
    text("E3", mark("cell of a hidden column")) +
      text("A3", "merged") +
      text("B3", mark("cell under a merged one")) +
      text("C3", mark("white letters"), ' s="4"') +
      text("D3", mark("format that shows nothing"), ' s="3"'),
  ) +
  row(
    4,
    `<c r="A4"><f>IF(LEN(A2)&gt;0,1,"${mark("text in a formula that reads a hidden row")}")</f></c>` +
      `<c r="B4"><f>Margin*${figure("constant beside a name that holds a figure")}</f></c>` +
      `<c r="C4"><f>IF(LEN(INDIRECT("Cos"&amp;"ts!A1"))&gt;0,2,"${mark("text in a formula that reads anywhere")}")</f></c>` +
      `<c r="D4"><f>SUM('${mark("name of a sheet left out, in a formula")}'!A1)</f></c>`,
  ) +
  row(
    5,
    `<c r="A5"><f>IF(LEN(C3)&gt;0,3,"${mark("text in a formula that reads white letters")}")</f></c>` +
      `<c r="B5"><f>Scope+${figure("constant beside a name of a sheet left out")}</f></c>` +
      `<c r="C5"><f>[1]Prices!A1*${figure("constant in a formula that reads another file")}</f><v>3</v></c>` +
      `<c r="D5"><f>SUM(Costs[${mark("column of a table left out, in a formula")}])</f></c>`,
  ) +
  row(
    6,
    `<c r="A6" t="s"><v>1</v></c><c r="B6"><f>HYPERLINK("https://a.invalid/${mark("address in a formula")}","see Costs")</f></c><c r="C6"><v>1</v><extLst><ext uri="{1}"><x>${mark("extension of a cell")}</x></ext></extLst></c>`,
  ) +
  `</sheetData><sheetProtection algorithmName="SHA-512" hashValue="${mark("hash of a sheet's password")}" sheet="1"/>` +
  `<protectedRanges><protectedRange name="${mark("name of a protected range")}" sqref="A1" securityDescriptor="${mark("who may edit a range")}"/></protectedRanges>` +
  `<scenarios><scenario name="${mark("name of a scenario")}" user="${mark("user of a scenario")}"><inputCells r="A1" val="${mark("value of a scenario")}"/></scenario></scenarios>` +
  `<autoFilter ref="A1:D6"><filterColumn colId="0"><filters><filter val="${mark("word of a filter")}"/></filters></filterColumn></autoFilter>` +
  `<customSheetViews><customSheetView guid="{${mark("guid of a view")}}"/></customSheetViews>` +
  `<mergeCells count="1"><mergeCell ref="A3:B3"/></mergeCells>` +
  `<conditionalFormatting sqref="A1"><cfRule type="expression" priority="1" dxfId="0"><formula>A1=Costs!$A$1&amp;"${mark("text of a rule")}"</formula></cfRule></conditionalFormatting>` +
  `<conditionalFormatting sqref="A2"><cfRule type="containsText" text="${mark("word of a rule")}" priority="2" dxfId="0"><formula>1</formula></cfRule></conditionalFormatting>` +
  `<dataValidations count="2"><dataValidation type="list" sqref="A1" promptTitle="${mark("title of an input message")}" prompt="${mark("input message")}" error="${mark("error message")}"><formula1>"${mark("word of a drop-down")},b"</formula1></dataValidation>` +
  `<dataValidation type="list" sqref="A2"><formula1>Costs!$A$1:$A$9</formula1></dataValidation></dataValidations>` +
  `<hyperlinks><hyperlink ref="A1" location="'${mark("place a link leads to")}'!A1" tooltip="${mark("tip of a link")}" display="${mark("text of a link")}"/><hyperlink ref="A2" r:id="rId9" xmlns:r="${LINK}"/></hyperlinks>` +
  `<pageSetup r:id="rId8" xmlns:r="${LINK}"/><headerFooter><oddHeader>${mark("head of a page")}</oddHeader></headerFooter>` +
  `<drawing r:id="rId1" xmlns:r="${LINK}"/><legacyDrawing r:id="rId2" xmlns:r="${LINK}"/><legacyDrawingHF r:id="rId3" xmlns:r="${LINK}"/>` +
  `<extLst><ext uri="{2}"><sparkline><f>Costs!A1:${mark("sparkline")}</f></sparkline></ext></extLst>`;

const COSTS = `<sheetData>${row(1, `${text("A1", mark("text of a sheet left out"))}<c r="B1" t="s"><v>0</v></c><c r="C1" t="str"><f>"a"</f><v>${mark("stored result of a sheet left out")}</v></c>`)}${row(2, `<c r="A2" s="2"><v>${figure("figure of a sheet left out")}</v></c>`)}</sheetData>`;

const NAMES =
  `<definedNames><definedName name="Margin">${figure("value of a name")}</definedName>` +
  `<definedName name="${mark("name of a name")}" comment="${mark("comment of a name")}">"${mark("text of a name")}"</definedName>` +
  `<definedName name="Scope" localSheetId="1">Costs!$A$2</definedName>` +
  `<definedName name="_xlnm.Print_Titles" localSheetId="1">Costs!$1:$1</definedName></definedNames>` +
  `<calcPr calcId="1"/><customWorkbookViews><customWorkbookView name="${mark("name of a view")}" guid="{0}"/></customWorkbookViews>`;

const ITEM = (words: string) => `<a>${words}</a>`;

/** Parts beside the sheets, each with what it may give away. */
function moreParts(): Record<string, string> {
  const link = (id: string, kind: string, target: string, more = "") =>
    `<Relationship Id="${id}" Type="${LINK}/${kind}" Target="${target}"${more}/>`;
  const links = (inside: string) =>
    `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${inside}</Relationships>`;
  return {
    "xl/styles.xml": STYLES,
    "xl/worksheets/_rels/sheet1.xml.rels": links(
      link("rId1", "drawing", "../drawings/drawing1.xml") +
        link("rId2", "vmlDrawing", "../drawings/vmlDrawing1.vml") +
        link("rId3", "vmlDrawing", "../drawings/vmlDrawing2.vml") +
        link("rId4", "comments", "../comments1.xml") +
        link("rId5", "threadedComment", "../threadedComments/threadedComment1.xml") +
        link("rId6", "table", "../tables/table1.xml") +
        link("rId7", "oleObject", "../embeddings/oleObject1.bin") +
        link("rId8", "printerSettings", "../printerSettings/printerSettings1.bin") +
        link(
          "rId9",
          "hyperlink",
          `https://a.invalid/${mark("address of a link")}`,
          ' TargetMode="External"',
        ) +
        link("rId10", "queryTable", "../queryTables/queryTable1.xml"),
    ),
    "xl/drawings/drawing1.xml": `<d><sp textlink="Costs!A1"><t>${mark("cached text of a linked box")}</t></sp><sp><t>${mark("text of a box")}</t><cNvPr descr="${mark("description of a picture")}"/></sp></d>`,
    "xl/drawings/vmlDrawing1.vml": `<xml><a alt="${mark("shape of a note")}"/></xml>`,
    "xl/drawings/vmlDrawing2.vml": `<xml><a alt="${mark("picture in the head of a page")}"/></xml>`,
    "xl/charts/chart1.xml": `<c><f>Costs!$A$1</f><strCache><v>${mark("cached text of a chart")}</v></strCache></c>`,
    "xl/comments1.xml": `<comments ${MAIN}><authors><author>${mark("author of a note")}</author></authors><commentList><comment ref="A1" authorId="0"><text><t>${mark("note written by hand")}</t></text></comment></commentList></comments>`,
    "xl/threadedComments/threadedComment1.xml": ITEM(mark("comment in a thread")),
    "xl/persons/person.xml": ITEM(mark("name of a person")),
    "xl/tables/table1.xml": `<table ${MAIN} id="1" name="Blades" displayName="Blades" ref="A1:B2"><tableColumns count="1"><tableColumn id="1" name="a" totalsRowLabel="${mark("label of a total")}"><calculatedColumnFormula>Costs!A1*${figure("rule of a column")}</calculatedColumnFormula></tableColumn></tableColumns></table>`,
    "xl/tables/table2.xml": `<table ${MAIN} id="2" name="Costs" displayName="Costs" ref="A1:B2"><tableColumns count="1"><tableColumn id="1" name="${mark("heading of a table left out")}"/></tableColumns></table>`,
    "xl/queryTables/queryTable1.xml": ITEM(mark("query")),
    "xl/embeddings/oleObject1.bin": mark("embedded object"),
    "xl/printerSettings/printerSettings1.bin": mark("printer"),
    "xl/connections.xml": `<connections><connection command="${mark("question to a database")}"><dbPr connection="Password=${mark("password of a connection")}"/></connection></connections>`,
    "xl/externalLinks/externalLink1.xml": ITEM(mark("cached value of another file")),
    "xl/externalLinks/_rels/externalLink1.xml.rels": links(
      link(
        "rId1",
        "externalLinkPath",
        `file:///C:/${mark("path of another file")}`,
        ' TargetMode="External"',
      ),
    ),
    "xl/pivotCache/pivotCacheDefinition1.xml": ITEM(mark("field of a pivot table")),
    "xl/pivotCache/pivotCacheRecords1.xml": ITEM(mark("record of a pivot table")),
    "xl/revisions/userNames.xml": ITEM(mark("user of a revision")),
    "xl/revisions/revisionLog1.xml": ITEM(mark("old value in a revision")),
    "xl/model/item.data": mark("data model"),
    "xl/media/image1.png": mark("picture"),
    "xl/theme/theme1.xml": `<theme name="${mark("name of a theme")}"/>`,
    "xl/webextensions/webextension1.xml": ITEM(mark("settings of an add-in")),
    "xl/unknown.txt": mark("part that nobody knows"),
    "customXml/item1.xml": ITEM(mark("custom XML")),
    "docProps/core.xml": `<p xmlns:dc="d"><dc:creator>${mark("author of the file")}</dc:creator><a>${mark("last author")}</a><dc:title>${mark("title of the file")}</dc:title><k>${mark("keywords")}</k></p>`,
    "docProps/app.xml": `<Properties><Company>${mark("company")}</Company><Manager>${mark("manager")}</Manager><TitlesOfParts>${mark("list of sheets in the properties")}</TitlesOfParts><HyperlinkBase>${mark("base of links")}</HyperlinkBase></Properties>`,
    "docProps/custom.xml": ITEM(mark("custom property")),
    "docProps/thumbnail.jpeg": mark("thumbnail"),
  };
}

/** A workbook with a marker in every place a file has for words, of which only `Plan` is to be shared. */
export function markedWorkbook(): { bytes: Uint8Array; marks: ReadonlyMap<string, string> } {
  const hidden = mark("name of a hidden sheet");
  const sheets = {
    Plan: PLAN,
    Costs: COSTS,
    [hidden]: `<sheetData>${row(1, text("A1", mark("text of a hidden sheet")))}</sheetData>`,
  };
  const strings = `<si><t>${mark("shared text of a sheet left out")}</t></si><si><t>kept value</t><rPh sb="0" eb="1"><t>${mark("phonetic guide")}</t></rPh></si>`;
  const plain = handMade({ sheets, strings, names: NAMES });
  const made = partsOf(plain);
  const main = (made["xl/workbook.xml"] ?? "")
    .replace(`<sheet name="${hidden}"`, `<sheet state="veryHidden" name="${hidden}"`)
    .replace(
      "<sheets>",
      `<fileSharing userName="${mark("user who shares the file")}"/><workbookPr codeName="${mark("code name of the workbook")}"/><ac xmlns="x" url="C:/Users/${mark("folder of the user")}/"/><workbookProtection workbookPassword="${mark("password of the workbook")}"/><sheets>`,
    );
  const links = (made["xl/_rels/workbook.xml.rels"] ?? "").replace(
    "</Relationships>",
    `${["styles", "theme/theme1", "connections", "persons/person", "externalLinks/externalLink1"]
      .map((name, at) => {
        const kind = name.split("/")[0]?.replace(/s$/, "") ?? "";
        const type = name === "styles" ? "styles" : kind;
        return `<Relationship Id="rIdM${at}" Type="${LINK}/${type}" Target="${name}.xml"/>`;
      })
      .join("")}</Relationships>`,
  );
  const parts = {
    ...made,
    ...moreParts(),
    "xl/workbook.xml": main,
    "xl/_rels/workbook.xml.rels": links,
  };
  return { bytes: handMade({ sheets: {}, parts }), marks: MARKS };
}
