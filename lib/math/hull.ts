type Corner = readonly [x: number, y: number];

/** Smallest convex outline round some points, counter-clockwise (y up), without points on its edges. Andrew's monotone chain (1979). */
export function convexHull(points: readonly Corner[]): Corner[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  if (sorted.length < 3) return sorted;
  const turn = (o: Corner, a: Corner, b: Corner) => (a[0] - o[0]) * (b[1] - o[1]) - (a[1] - o[1]) * (b[0] - o[0]);
  const half = (row: readonly Corner[]) => {
    const chain: Corner[] = [];
    for (const point of row) {
      while (chain.length >= 2 && turn(chain[chain.length - 2], chain[chain.length - 1], point) <= 0) chain.pop();
      chain.push(point);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

/** The hull of the points with `margin` of room round it: the hull of an octagon of that size put on every corner. */
export function hullWithRoom(points: readonly Corner[], margin: number): Corner[] {
  const octagon = Array.from({ length: 8 }, (_, n) => ((n + 0.5) * Math.PI) / 4);
  const reach = margin / Math.cos(Math.PI / 8);
  return convexHull(
    points.flatMap(([x, y]) =>
      octagon.map((angle) => [x + reach * Math.cos(angle), y + reach * Math.sin(angle)] as const),
    ),
  );
}
