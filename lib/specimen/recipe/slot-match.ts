/** Which item fills which unit; units and items by their numbers. */
export type Matching = ReadonlyMap<number, number>;

/**
 * Fills as many units with different items as can be filled at once (augmenting paths after Kuhn). The answer maps items to
 * units.
 */
export function matchUnits(units: number, items: number, fits: (unit: number, item: number) => boolean): Matching {
  const unitOfItem = new Map<number, number>();
  const fill = (unit: number, tried: Set<number>): boolean => {
    for (let item = 0; item < items; item++) {
      if (tried.has(item) || !fits(unit, item)) continue;
      tried.add(item);
      const other = unitOfItem.get(item);
      if (other === undefined || fill(other, tried)) {
        unitOfItem.set(item, unit);
        return true;
      }
    }
    return false;
  };
  for (let unit = 0; unit < units; unit++) fill(unit, new Set());
  return unitOfItem;
}
