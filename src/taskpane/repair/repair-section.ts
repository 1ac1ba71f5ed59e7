import type { HostPort } from "../../host/port";
import { element } from "../parts/dom";
import { disclosure, facts } from "../parts/tables";
import { type LongWork, longWork } from "./long-work";
import { type Broken, type Findings, findBroken } from "./repair";

const WHY = [
  "A formula typed, pasted or written by another program while the add-in was not loaded can go on showing #NAME?, however often the sheet is worked out.",
  "Entering it anew mends it. So does taking off what some programs put in front of our names: _xldudf_BLADE_… or [2]!…",
];

/** Repair: finds our formulas that show #NAME? or carry a broken name, and enters them anew. */
export function repairSection(port: HostPort): HTMLElement {
  const search = longWork("Look through the workbook", async (work) =>
    findingsShown(port, await findBroken(port, work)),
  );
  return element(
    "section",
    { "aria-label": "Repair" },
    element("h3", {}, "Repair formulas that show #NAME?"),
    ...WHY.map((sentence) => element("p", {}, sentence)),
    port.hasSheet ? search.block : element("p", {}, "There is no sheet beside this page."),
  );
}

function findingsShown(port: HostPort, findings: Findings): (HTMLElement | string)[] {
  const { ours, broken, protectedSheets, isComplete } = findings;
  const mendable = broken.filter(({ canBeMended }) => canBeMended);
  const scope = isComplete ? "" : "Stopped on the way. ";
  const cells = ours === 1 ? "1 cell with a BLADE formula" : `${ours} cells with a BLADE formula`;
  const sentence = `${scope}${cells}; ${broken.length === 0 ? "none is broken" : `${broken.length} broken`}.`;
  return [
    element("p", {}, sentence),
    ...protectedSheets.map((sheet) =>
      element(
        "p",
        { class: "refusal" },
        `${sheet} is protected: take its protection off (Review tab), then look again.`,
      ),
    ),
    ...(broken.length === 0 ? [] : [cellList("Broken formulas", broken)]),
    ...(mendable.length === 0 ? [] : [mending(port, mendable).block]),
  ];
}

function cellList(caption: string, broken: readonly Broken[]): HTMLElement {
  const list = () =>
    facts(
      broken.map(({ address, why, formula }): [string, string] => [`${address}: ${why}`, formula]),
      true,
    );
  return broken.length > 8 ? disclosure(`${caption}: ${broken.length}`, () => [list()]) : list();
}

function mending(port: HostPort, broken: readonly Broken[]): LongWork {
  const label = broken.length === 1 ? "Enter 1 formula anew" : `Enter ${broken.length} formulas anew`;
  const made: LongWork = longWork(label, async (work) => {
    const written = await port.replaceFormulas(broken, work);
    const left = broken.length - written;
    made.press.hidden = true;
    return [
      element(
        "p",
        {},
        `${written} of ${broken.length} entered anew. Look through the workbook again to see whether any still fails.`,
      ),
      ...(left === 0 ? [] : [element("p", {}, leftText(left, work.signal.aborted))]),
    ];
  });
  return made;
}

function leftText(left: number, isStopped: boolean): string {
  const cells = left === 1 ? "1 cell was" : `${left} cells were`;
  return isStopped
    ? `${cells} not reached before the stop.`
    : `${cells} left alone, because another formula fills them.`;
}
