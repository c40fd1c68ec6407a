import type { Block } from "./blocks";

/** Groups of blocks that have neither a truth nor a call in common with another group: each is a problem of its own. */
export function components(blocks: readonly Block[]): Block[][] {
  const parent = new Map<number, number>();
  const rootOf = (key: number): number => {
    let root = key;
    while (parent.has(root)) root = parent.get(root)!;
    if (root !== key) parent.set(key, root);
    return root;
  };
  const join = (a: number, b: number): void => {
    const [one, other] = [rootOf(a), rootOf(b)];
    if (one !== other) parent.set(one, other);
  };
  // Truths count upwards from 0, calls downwards from -1.
  for (const block of blocks) {
    for (const truth of block.target.truths) join(truth, block.target.truths[0]);
    for (const piece of block.pieces) join(-1 - piece, block.target.truths[0]);
  }
  const groups = new Map<number, Block[]>();
  for (const block of blocks) {
    const root = rootOf(block.target.truths[0]);
    const group = groups.get(root);
    if (group) group.push(block);
    else groups.set(root, [block]);
  }
  return [...groups.values()];
}
