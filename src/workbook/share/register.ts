import { patchWorkbook } from "../file/patch/patch-workbook";
import { WorkbookFile } from "../file/patch/workbook-file";
import { FIRST_ROW } from "../sheets/parts/table-sheet";
import { PlanSheet } from "../sheets/plan-sheet";
import { REGISTER, REGISTER_HEADINGS, type RegisterKey } from "../sheets/register-sheet";
import { AUDIENCES } from "./audience";
import type { ShareCopy } from "./share-copy";

/** A copy that went out. What is not known stays empty. */
export type Sending = Readonly<Partial<Record<Exclude<RegisterKey, "number" | "revision">, number | string>>>;

/** What the register says of a copy. @param whom - For whom it was made, by the word of the audience and by name. */
export function sendingOf(
  copy: Pick<ShareCopy, "sheets" | "number" | "digest">,
  whom: { readonly word: string | undefined; readonly name: string | undefined },
  {
    sent,
    file,
    answerBy = "",
  }: { readonly sent: number | string; readonly file: string; readonly answerBy?: string },
): Sending {
  const label = AUDIENCES.find(({ word }) => word === whom.word)?.label ?? "";
  return {
    sent,
    to: [label, whom.name ?? ""].filter((part) => part !== "").join(": "),
    papers: copy.sheets.join(", "),
    file,
    copy: copy.number ?? "",
    answerBy,
    digest: copy.digest,
  };
}

/**
 * Notes a copy in the register of a plan, in the first row under all that stand there.
 *
 * @param bytes - The plan as it was read.
 * @returns The plan with the row in it; `undefined` for a workbook without a register.
 * @throws FileRefusal for a file that cannot be read or must not be touched.
 */
export async function registered(bytes: Uint8Array, sending: Sending): Promise<Uint8Array | undefined> {
  const { live } = WorkbookFile.of(bytes);
  const sheetNamed = (name: string) => {
    const found = live.sheets.find(({ listed }) => listed.name === name);
    return found && new PlanSheet(live, found);
  };
  const register = sheetNamed(REGISTER);
  if (register === undefined) return undefined;
  const taken = Object.values(REGISTER_HEADINGS).flatMap((heading) => register.rowsWith(heading));
  const row = Math.max(FIRST_ROW - 1, ...taken) + 1;
  const cover = sheetNamed("Cover");
  const revision = ["Run", "Revision"]
    .map((label) => String(cover?.beside(label).value ?? ""))
    .join(" ")
    .trim();
  const values = { ...sending, number: row - FIRST_ROW + 1, revision };
  const cells = (Object.keys(REGISTER_HEADINGS) as RegisterKey[]).flatMap((key) => {
    const column = register.columnOf(REGISTER_HEADINGS[key]);
    const value = values[key];
    return column === undefined || value === undefined || value === ""
      ? []
      : [{ row, column, content: { value } }];
  });
  return (await patchWorkbook(bytes, new Map([[REGISTER, cells]]))).bytes;
}
