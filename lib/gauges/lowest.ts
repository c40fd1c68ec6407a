/** Where a function with one hollow between `low` and `high` is lowest, to within `settled`: golden section (Kiefer 1953). */
export function lowestOf(value: (at: number) => number, low: number, high: number, settled: number): number {
  const share = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [low, high];
  let [c, d] = [b - share * (b - a), a + share * (b - a)];
  let [fc, fd] = [value(c), value(d)];
  while (b - a > settled) {
    if (fc <= fd) {
      [b, d, fd] = [d, c, fc];
      c = b - share * (b - a);
      fc = value(c);
    } else {
      [a, c, fc] = [c, d, fd];
      d = a + share * (b - a);
      fd = value(d);
    }
  }
  return (a + b) / 2;
}
