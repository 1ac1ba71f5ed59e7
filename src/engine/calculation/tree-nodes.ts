import type { FunctionVariantType } from "@univerjs/engine-formula";

/** A node of the engine's tree, as far as it is worked out here. */
export interface TreeNode {
  readonly nodeType: number;
  getToken(): string;
  getChildren(): readonly TreeNode[];
  getParent?(): TreeNode | null | undefined;
  getValue(): FunctionVariantType | null | undefined;
  setValue(value: FunctionVariantType | null): void;
  setRefOffset?(x: number, y: number): void;
  isEmptyParamFunction?(): boolean;
  execute(): void;
  resetCalculationState(): void;
}

/** Kinds of nodes, by the engine's own numbers. */
export const REFERENCE = 1;
export const VALUE = 2;
export const OPERATOR = 3;
export const FUNCTION = 4;
const UNION = 10;
export const PREFIX = 11;

/** Both ends of a range that are addresses. */
export function isRange(node: TreeNode): boolean {
  const ends = node.getChildren();
  return node.nodeType === UNION && ends.length === 2 && ends.every(({ nodeType }) => nodeType === REFERENCE);
}

/** @param token - In capital letters. */
export const isNamed = (node: TreeNode | undefined, kind: number, token: string): boolean =>
  node?.nodeType === kind && node.getToken().trim().toUpperCase() === token;
