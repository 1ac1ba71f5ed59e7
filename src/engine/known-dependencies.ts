import type { Injector } from "@univerjs/core";
import {
  IDependencyManagerService,
  IFormulaCurrentConfigService,
  IFormulaDependencyGenerator,
  type IFormulaDependencyTree,
  IFormulaRuntimeService,
} from "@univerjs/engine-formula";

/** A formula filled down stands in its first cell; the others have no range list of their own. */
type Tree = IFormulaDependencyTree & { pushRangeList(ranges: Range[]): void };
type Range = IFormulaDependencyTree["rangeList"][number];

/** The part of the engine's generator that is taken over. */
interface Generator {
  _generateTreeList(formulas: object, others: object, units: object): Promise<Tree[]>;
  _registerFormulas(units: string[], formulas: object, data: object, list: Tree[]): void;
  _registerOtherFormulas(others: object, units: string[], list: Tree[]): void;
  _registerFeatureFormulas(list: Tree[]): void;
  _getTreeNode(tree: Tree): unknown;
  _includeTree(tree: Tree, node: unknown): boolean;
  _getAddressFunctionNodeList(node: unknown): IFormulaDependencyTree["addressFunctionNodes"];
  _getRangeListByNode(work: { node: unknown; refOffsetX: number; refOffsetY: number }): Promise<Range[]>;
  _detectForcedRecalculationNode(tree: Tree, node: unknown): boolean;
  _calculateListByFunctionRefNode(list: Tree[]): Promise<void>;
}

/** What a formula in its place was found to be when it was read. */
interface Known {
  readonly formula: string;
  readonly ranges: readonly Range[];
  /** Reading it anew may bring something else: TODAY and RAND at every change, OFFSET and INDIRECT with other values. */
  readonly mustBeRead: boolean;
}

const isEmpty = (map: object | null | undefined) => Object.keys(map ?? {}).length === 0;

/**
 * Lets the engine read each formula once. As published, every change makes it parse all formulas of the workbook
 * anew and work out what each of them reads, although none of that changed.
 */
export function rememberDependencies(injector: Injector): void {
  const generator = injector.get(IFormulaDependencyGenerator) as unknown as Generator;
  const config = injector.get(IFormulaCurrentConfigService);
  const runtime = injector.get(IFormulaRuntimeService);
  const manager = injector.get(IDependencyManagerService);
  const known = new Map<number, Known>();

  /** Names, tables and sheets may mean other cells than before, and then so may every formula. */
  function nothingRenamed(): boolean {
    const maps = [
      config.getDirtyNameMap(),
      config.getDirtyDefinedNameMap(),
      config.getDirtySuperTableMap(),
      config.getClearDependencyTreeCache(),
    ];
    return !config.isForceCalculate() && maps.every(isEmpty);
  }

  async function rangesOf(tree: Tree, node: unknown): Promise<Range[]> {
    const { row, column, rowCount, columnCount, subUnitId, unitId, refOffsetX, refOffsetY } = tree;
    runtime.setCurrent(row, column, rowCount, columnCount, subUnitId, unitId);
    return generator._getRangeListByNode({ node, refOffsetX, refOffsetY });
  }

  async function read(tree: Tree): Promise<void> {
    const node = generator._getTreeNode(tree);
    const addresses = generator._getAddressFunctionNodeList(node);
    if (addresses.length > 0) tree.addressFunctionNodes = [...addresses];
    tree.isDirty = generator._includeTree(tree, node);
    if (tree.isVirtual) return;
    const ranges = await rangesOf(tree, node);
    tree.pushRangeList(ranges);
    const mustBeRead = addresses.length > 0 || generator._detectForcedRecalculationNode(tree, node);
    known.set(tree.treeId, { formula: tree.formula, ranges: [...ranges], mustBeRead });
  }

  function recalled(tree: Tree): boolean {
    const found = known.get(tree.treeId);
    if (found === undefined || found.mustBeRead || found.formula !== tree.formula || tree.isVirtual)
      return false;
    tree.pushRangeList([...found.ranges]);
    // Without a node only the places are compared: no volatile function and no renamed name is in it.
    tree.isDirty = generator._includeTree(tree, null);
    return true;
  }

  async function enter(tree: Tree): Promise<void> {
    if (tree.formula) {
      if (recalled(tree)) return;
      await read(tree);
    }
    if (!tree.isCache) manager.addDependencyRTreeCache(tree);
  }

  generator._generateTreeList = async (formulas, others, units) => {
    const list: Tree[] = [];
    if (!nothingRenamed()) known.clear();
    if (config.isForceCalculate()) manager.reset();
    generator._registerFormulas(Object.keys(formulas), formulas, units, list);
    generator._registerOtherFormulas(others, Object.keys(others), list);
    generator._registerFeatureFormulas(list);
    for (const tree of list) await enter(tree);
    // It tells formulas by their places, so it gets all of them, but only where one moves its reading at all.
    if (list.some(({ addressFunctionNodes }) => addressFunctionNodes.length > 0))
      await generator._calculateListByFunctionRefNode(list);
    return list;
  };
}
