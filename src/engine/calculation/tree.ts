import {
  type BaseReferenceObject,
  ErrorType,
  ErrorValueObject,
  type FunctionVariantType,
  NullValueObject,
  NumberValueObject,
} from "@univerjs/engine-formula";
import type { Area } from "./area";
import { type Counting, cellsThatPass, countingOf } from "./counted-cells";
import type { Pieces } from "./pieces";
import type { ReadCells } from "./read-cells";
import { singleOf } from "./single-value";
import { FUNCTION, isNamed, isRange, REFERENCE, type TreeNode, VALUE } from "./tree-nodes";

/** Where a formula stands while it is worked out, and what it says where others of its form say something else. */
export interface Place {
  readonly row: number;
  readonly column: number;
  readonly sheetId: string;
  /** Rows below the formula that the tree was made from. */
  readonly offset: number;
  /** What its references and numbers are; left out for a tree that is its own alone. */
  readonly areas?: readonly Area[];
  readonly numbers?: readonly string[];
  /** Notes what is read of the references; for a tree that is its own alone it is not known. */
  readonly read?: ReadCells;
}

type Step = (place: Place) => void;

/** What stands for a branch that is not taken. */
const nothing = () => NullValueObject.create() as FunctionVariantType;

/** The one value that a node came to; `undefined` for a list of several, or none. */
const single = (node: TreeNode | undefined) => singleOf(node?.getValue() ?? undefined);

const isTrue = (value: FunctionVariantType) => Boolean((value as { getValue(): unknown }).getValue());

/** Only the branch that is taken is worked out, as in any spreadsheet; the published engine works out both. */
function condition(node: TreeNode, steps: readonly Step[]): Step {
  const children = node.getChildren();
  const run = (at: number, place: Place) => steps[at]?.(place);
  const leave = (at: number) => children[at]?.setValue(nothing());
  return (place) => {
    run(0, place);
    const asked = single(children[0]);
    const isError = asked?.isError() === true;
    if (asked === undefined || (!isError && isTrue(asked))) run(1, place);
    else leave(1);
    if (asked === undefined || (!isError && !isTrue(asked))) run(2, place);
    else leave(2);
    node.execute();
  };
}

/** What stands instead of an error is worked out where there is one. */
function insteadOfError(node: TreeNode, steps: readonly Step[]): Step {
  const children = node.getChildren();
  return (place) => {
    steps[0]?.(place);
    const value = single(children[0]);
    if (value !== undefined && !value.isError()) children[1]?.setValue(nothing());
    else steps[1]?.(place);
    node.execute();
  };
}

/** Counts cells one by one where the range is certain; otherwise the engine does as published. */
function counted(node: TreeNode, { range, test }: Counting, name: Step, published: Step): Step {
  return (place) => {
    name(place);
    const cells = range.getValue();
    const isReference = cells?.isReferenceObject() === true;
    const count = isReference ? cellsThatPass(cells as BaseReferenceObject, test) : undefined;
    if (count === undefined) published(place);
    else node.setValue(NumberValueObject.create(count));
  };
}

/** Functions that read more cells than a range of theirs names: as many as another has. */
const WIDENING = new Set(["SUMIF", "AVERAGEIF"]);

/** True for a part of what such a function is given. */
function isWidened(node: TreeNode): boolean {
  for (let above = node.getParent?.(); above; above = above.getParent?.())
    if (WIDENING.has(above.getToken().trim().toUpperCase())) return true;
  return false;
}

/** INDEX reads one cell of a range where it chooses one, and none where it is told no place. */
function chosen(node: TreeNode, slot: number, published: Step): Step {
  const places = node.getChildren().slice(1);
  return (place) => {
    published(place);
    const value = node.getValue();
    if (!value?.isReferenceObject()) {
      if (places.some((told) => single(told)?.isError())) place.read?.chooseNone(slot);
      return;
    }
    const { startRow, endRow, startColumn, endColumn } = (value as BaseReferenceObject).getRangePosition();
    if (startRow === endRow && startColumn === endColumn) place.read?.choose(slot, startRow, startColumn);
  };
}

const LAZY: Readonly<Partial<Record<string, typeof condition>>> = { IF: condition, IFERROR: insteadOfError };

/** A number or a text of the formula: its value is made once. */
function constant(node: TreeNode, slot: number | undefined): Step {
  const known = new Map<string, FunctionVariantType>();
  const own = node.getToken();
  const token = node as unknown as { _token: string };
  return ({ numbers }) => {
    const text = slot === undefined ? own : (numbers?.[slot] ?? own);
    const found = known.get(text);
    if (found !== undefined) {
      node.setValue(found);
      return;
    }
    token._token = text;
    node.execute();
    const made = node.getValue();
    // A list may be changed by whoever reads it.
    if (made && !made.isArray()) known.set(text, made);
  };
}

/** True for cells of a sheet that the workbook does not have: the engine takes them for empty ones. */
const isNowhere = (reference: BaseReferenceObject): boolean =>
  Boolean(reference.getForcedSheetName()) && !reference.getForcedSheetId();

/** A reference of a tree that is its own alone: the engine moves it. */
function moving(node: TreeNode): Step {
  return ({ offset }) => {
    node.setRefOffset?.(0, offset);
    node.execute();
    const made = node.getValue();
    if (made?.isReferenceObject() && isNowhere(made as BaseReferenceObject))
      node.setValue(ErrorValueObject.create(ErrorType.REF));
  };
}

/** What the engine makes of a reference; for a range it joins both of its ends. */
function referenceOf(node: TreeNode): BaseReferenceObject | undefined {
  for (const end of node.getChildren()) referenceOf(end);
  node.setRefOffset?.(0, 0);
  node.execute();
  const made = node.getValue();
  return made?.isReferenceObject() ? (made as BaseReferenceObject) : undefined;
}

/** A reference that stands for other cells in each formula. */
function cells(node: TreeNode, slot: number): Step {
  let kept: BaseReferenceObject | undefined;
  return (place) => {
    const area = place.areas?.[slot];
    kept ??= referenceOf(node);
    if (kept === undefined || area === undefined) return;
    place.read?.add(slot);
    if (isNowhere(kept)) {
      node.setValue(ErrorValueObject.create(ErrorType.REF));
      return;
    }
    const { row, lastRow, column, lastColumn } = area;
    kept.setRangeData({ startRow: row, endRow: lastRow, startColumn: column, endColumn: lastColumn });
    kept.setDefaultSheetId(place.sheetId);
    kept.setCurrentRowAndColumn(place.row, place.column);
    node.setValue(kept);
  };
}

const isLeaf = (node: TreeNode) => node.nodeType === REFERENCE || node.nodeType === VALUE || isRange(node);

/** The leaves of a tree from left to right, a range as one. */
function leavesOf(node: TreeNode): readonly TreeNode[] {
  return isLeaf(node) ? [node] : node.getChildren().flatMap(leavesOf);
}

function textOf(leaf: TreeNode): string {
  const parts = isRange(leaf) ? leaf.getChildren() : [leaf];
  return parts.map((part) => part.getToken().trim()).join(":");
}

/** The places of leaves among the references, or among the numbers, of their formula. */
type Slots = ReadonlyMap<TreeNode, number | undefined>;

/** The engine's tree of a formula, made ready to be worked out again and again. */
export class Tree {
  /** True where formulas of the same form with other references and numbers may use it too. */
  readonly isShared: boolean;
  private readonly run: Step;

  constructor(
    private readonly root: TreeNode,
    pieces: Pieces | undefined,
  ) {
    const leaves = leavesOf(root);
    this.isShared =
      pieces !== undefined &&
      leaves.length === pieces.leaves.length &&
      leaves.every((leaf, at) => textOf(leaf) === pieces.leaves[at]?.text);
    const slots = new Map(this.isShared ? leaves.map((leaf, at) => [leaf, pieces?.leaves[at]?.slot]) : []);
    this.run = this.stepOf(root, slots);
  }

  /** What the formula of a place comes to. */
  valueAt(place: Place): FunctionVariantType | null | undefined {
    this.run(place);
    return this.root.getValue();
  }

  /** Forgets the values of the last formula. */
  reset(): void {
    this.root.resetCalculationState();
  }

  private stepOf(node: TreeNode, slots: Slots): Step {
    const slot = slots.get(node);
    if (node.nodeType === VALUE) return constant(node, slot);
    if (slot !== undefined) return cells(node, slot);
    if (node.nodeType === REFERENCE) return moving(node);
    const children = node.getChildren();
    const steps = children.map((child) => this.stepOf(child, slots));
    const lazy = node.nodeType === FUNCTION ? LAZY[node.getToken().toUpperCase()] : undefined;
    if (lazy !== undefined && children.length > 1) return lazy(node, steps);
    const published: Step = (place) => {
      for (const step of steps) step(place);
      node.execute();
    };
    return this.quick(node, slots, published);
  }

  /** What some functions are worked out by in place of the published way. */
  private quick(node: TreeNode, slots: Slots, published: Step): Step {
    const counting = countingOf(node);
    if (counting !== undefined) return counted(node, counting, this.stepOf(counting.range, slots), published);
    const [first] = node.getChildren();
    const slot = first && isNamed(node, FUNCTION, "INDEX") ? slots.get(first) : undefined;
    return slot === undefined || isWidened(node) ? published : chosen(node, slot, published);
  }
}
