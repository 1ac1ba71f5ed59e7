import type { CellRemark } from "../../file/patch/recalculate";
import { plainContent } from "../values";
import type { Cause, Difference } from "./causes";
import type { Verification } from "./verify-copy";

/** Remarks on cells under what they have in common. */
export interface RemarkGroup {
  readonly title: string;
  readonly remarks: readonly CellRemark[];
}

const TITLES: Readonly<Record<Cause, string>> = {
  typed: "Typed otherwise in the two files:",
  formula: "The formula is another one than the copy's note keeps:",
  clock: "The formula asks for the time or a random number:",
  stored: "Not calculated here; the live file holds another value than the copy:",
  version: "The copy was calculated by another version or data edition, which may be why:",
  follows: "Follow from the cells above:",
  unexplained: "No reason found; the copy may have been altered:",
};

function inWords({ sheet, cell, live, shared }: Difference): CellRemark {
  const [ours, theirs] = [live, shared].map((content) => plainContent(content) || "empty");
  return { sheet, cell, text: `live ${ours}, copy ${theirs}` };
}

/** What a copy shows otherwise than one made now, cell by cell: formulas first, then values by cause, then the rest. */
export function remarkGroups(found: Verification): RemarkGroup[] {
  const causes = (Object.keys(TITLES) as Cause[]).map((cause) => ({
    title: TITLES[cause],
    remarks: found.differences.filter((difference) => difference.cause === cause).map(inWords),
  }));
  const groups = [
    { title: "Formulas in the copy, which should hold values only:", remarks: found.formulas },
    ...causes,
    { title: "Differs from a copy made now:", remarks: found.shown },
    { title: "Differs on Provenance from a copy made now:", remarks: found.provenance },
  ];
  return groups.filter(({ remarks }) => remarks.length > 0);
}
