import { type FeatureRow, row } from "./row";

/** What goes wrong in the shape of the weld. Likelihoods and sizes are common practice, no source. */
export const SHAPED_ROWS: readonly FeatureRow[] = [
  row("cap", "continuous-undercut", "toe", "hmml", 0.55, 2, [12, 48], [0.26, 1.1], 4, { afterStop: 0.35 }),
  row("cap", "intermittent-undercut", "toe", "hmml", 0.45, 1, [20, 50], [0.27, 0.95], 3),
  row("cap", "sidewall-fusion", "toe", "mhml", 1, 1, [10, 40], [0.33, 1.4], 10),
  row("cap", "incompletely-filled-groove", "weld", "mmml", 1, 1, [20, 50], [0.44, 1.5], 11, {
    variants: ["both", "one-side"],
  }),
  row("cap", "overlap", "toe", "mmml", 1, 1, [10, 34], [0.8, 3], 5, { sideIn: { PC: -1 } }),
  row("cap", "excess-weld-metal", "weld", "mmml", 1, 1, [22, 42], [3.1, 5], 12),
  row("cap", "sagging", "weld", "mmml", 1, 1, [18, 42], [0.42, 1.8], 12, { positions: { PC: 2, PE: 1.5 } }),
  row("cap", "inter-run-fusion", "run", "mhml", 1, 1, [8, 40], [0.33, 1.4], 5, { variants: ["between"], leastRuns: 2 }),
  row("cap", "inter-run-undercut", "run", "llll", 1, 1, [10, 50], [0.29, 0.95], 4, {
    variants: ["between"],
    leastRuns: 2,
    positions: { PC: 1.5 },
  }),
  row("cap", "irregular-width", "weld", "mlml", 0.7, 1, [20, 60], [3, 5], 6, { positions: { PF: 1.5, PE: 1.5 } }),
  row("root", "irregular-width", "weld", "mlml", 0.3, 1, [20, 60], [2.3, 3.5], 6, { positions: { PF: 1.3, PE: 1.3 } }),
  row("cap", "irregular-surface", "weld", "mlml", 1, 1, [12, 60], [0.9, 1.3], 8, { positions: { PF: 1.5, PE: 2 } }),
  row("cap", "incorrect-weld-toe", "toe", "mmml", 1, 1, [20, 80], [1.25, 1.7], 14, {
    positions: { PC: 1.5 },
    // in the horizontal position the metal hangs over the lower toe
    sideIn: { PC: -1 },
  }),
  row("root", "root-penetration", "weld", "hmml", 1, 1, [12, 42], [0.46, 1.7], 12),
  row("root", "root-fusion", "toe", "hhml", 1, 1, [11, 42], [0.33, 1.3], 10),
  row("root", "excess-penetration", "weld", "mmll", 0.55, 1, [9, 28], [2.7, 4.6], 10),
  row("root", "excess-penetration", "weld", "mmll", 0.3, 1, [3, 14], [3.7, 9], 7, {
    variants: ["drip"],
    // overhead the root lies above and nothing can drip from it
    positions: { PE: 0 },
  }),
  row("root", "excess-penetration", "weld", "mmll", 0.15, 1, [8, 18], [3.4, 5.2], 9, { variants: ["melt-through"] }),
  row("root", "overlap", "toe", "llll", 1, 1, [10, 28], [0.75, 2.4], 5, { sideIn: { PC: -1 } }),
  row("root", "tack-imperfection", "weld", "llll", 0.6, 1, [4, 16], [0.8, 1.6], 12),
  row("root", "tack-imperfection", "weld", "llll", 0.4, 1, [10, 18], [0.8, 1.6], 14, { variants: ["broken"] }),
  row("root", "root-concavity", "weld", "lllh", 1, 1, [16, 44], [0.32, 1.2], 10),
  row("root", "shrinkage-groove", "toe", "mllm", 1, 1, [16, 48], [0.27, 0.95], 5, { variants: ["one", "one", "both"] }),
];
