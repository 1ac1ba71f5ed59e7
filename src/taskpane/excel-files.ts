import { openAsNew, workbookFile } from "../host/excel-file";
import type { PaneFiles } from "./pane-files";

/** Reading and writing of workbooks, and the formula engine with it: fetched when it is first asked for. */
const maker = () => import(/* webpackChunkName: "workbook-files" */ "../workbook/made-files");

const OPEN = "The share copy is open as a new workbook: save it under a name of its own";

const WITH_ANSWERS =
  "The plan is open as a new workbook with the answers in it: look it over and save it in the old one's place. Answers taken:";

/** Share copy and planning workbook in Excel: each opens as a new workbook, the present one is left as it is. */
export const excelFiles: PaneFiles = {
  async share() {
    const { name, bytes } = await workbookFile();
    const { shareList, shareQuestion, shareReport } = await maker();
    const question = shareQuestion(bytes, name);
    return {
      offers: question.offers,
      enquiries: question.enquiries,
      sheets: question.sheets,
      async make(wish, date) {
        const choice =
          "whom" in wish
            ? ({ kind: "for", ...wish } as const)
            : ({ kind: "sheets", names: wish.sheets } as const);
        const copy = await question.copy(choice, date);
        return {
          list: shareList(copy),
          async open() {
            await openAsNew(copy.bytes);
            return shareReport(OPEN, copy);
          },
        };
      },
    };
  },
  async answers(sources) {
    const { bytes } = await workbookFile();
    const { answersQuestion } = await maker();
    const { entries, remarks, counts, take } = await answersQuestion(bytes, sources);
    return {
      entries,
      remarks,
      counts,
      async take(numbers, date) {
        await openAsNew(await take(numbers, date));
        return { sentence: `${WITH_ANSWERS} ${numbers.length}`, remarks: [] };
      },
    };
  },
  async plan() {
    const { planningWorkbook } = await maker();
    await openAsNew(await planningWorkbook());
    return {
      sentence: "The planning workbook is open as a new workbook: fill in the shaded cells and save it.",
      remarks: [],
    };
  },
  async demo() {
    const { demoPlan } = await maker();
    await openAsNew(await demoPlan());
    return {
      sentence:
        "An invented run, R-07 of Tern Hollow Forge, is open as a new workbook: change what you like.",
      remarks: [],
    };
  },
};
