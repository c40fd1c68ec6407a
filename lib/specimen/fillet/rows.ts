import { type FeatureRow, row } from "../recipe/rows/row";

/** On a level base plate metal sags from the standing plate down onto the base plate. */
const UPPER = { sideIn: { PB: 1 } } as const;
const LOWER = { sideIn: { PB: -1 } } as const;

/** What goes wrong on a fillet. Toe and plate: -1 the base plate's, 1 the standing one's. Likelihoods and sizes are common practice, no source. */
export const FILLET_ROWS: readonly FeatureRow[] = [
  row("cap", "continuous-undercut", "toe", "hmm-", 0.6, 1, [12, 40], [0.3, 1], 4, { afterStop: 0.3, ...UPPER }),
  row("cap", "intermittent-undercut", "toe", "hmm-", 0.4, 1, [20, 42], [0.34, 0.9], 3, UPPER),
  row("cap", "overlap", "toe", "mmm-", 1, 1, [12, 30], [1.3, 2.8], 5, LOWER),
  row("cap", "sidewall-fusion", "toe", "mhm-", 1, 1, [10, 34], [0.35, 0.9], 5),
  row("cap", "incorrect-weld-toe", "toe", "mlm-", 0.7, 1, [18, 40], [1.3, 1.7], 14, LOWER),
  row("cap", "excessive-convexity", "weld", "mmm-", 1, 1, [18, 40], [1.9, 2.8], 10, { positions: { PA: 0.6 } }),
  row("cap", "excessive-asymmetry", "weld", "mmm-", 1, 1, [22, 44], [2.6, 4], 10, { positions: { PB: 1.6 }, ...LOWER }),
  row("cap", "insufficient-throat", "weld", "mmm-", 1, 1, [20, 44], [0.5, 1.2], 10, { variants: ["legs", "hollow"] }),
  row("cap", "excessive-throat", "weld", "mmm-", 0.6, 1, [20, 40], [2, 3], 10),
  row("cap", "slag-residue", "toe", "hlh-", 1, 1, [4, 20], [0.7, 1.7], 2, { afterStop: 0.3, ...UPPER }),
  row("cap", "surface-pore", "run", "mhm-", 1, 2, [0, 0], [0.45, 2.2], 2, { afterStop: 0.5 }),
  row("cap", "clustered-porosity", "run", "lhm-", 0.8, 1, [5, 18], [0.4, 1.4], 2, { afterStop: 0.4 }),
  row("cap", "linear-porosity", "run", "lml-", 1, 1, [9, 36], [0.4, 1.3], 2),
  row("cap", "crater-pipe", "stop", "hmm-", 0.8, 1, [0, 0], [0.6, 1.7], 10),
  row("cap", "crater-crack", "stop", "mll-", 0.8, 1, [0, 0], [1.8, 5], 10, { variants: ["star", "along", "across"] }),
  row("cap", "poor-restart", "stop", "hmm-", 0.8, 1, [0, 0], [0.95, 1.9], 14, { variants: ["hump", "hump", "gap"] }),
  row("cap", "longitudinal-crack", "run", "lll-", 0.6, 1, [7, 36], [0.08, 0.2], 2, { variants: ["centre"] }),
  row("cap", "longitudinal-crack", "toe", "lll-", 0.4, 1, [8, 34], [0.08, 0.18], 2, { variants: ["toe"] }),
  row("cap", "stray-arc", "plate", "hll-", 1, 1, [3, 14], [0.18, 0.5], 4, { half: 3.5 }),
  row("cap", "spatter", "plate", "hhh-", 1, 1, [12, 32], [0.6, 1.2], 6),
];

/** What tempts to a false call. */
export const FILLET_NEUTRAL_ROWS: readonly FeatureRow[] = [
  row("cap", "shallow-undercut", "toe", "hmm-", 1, 1, [14, 28], [0.1, 0.17], 3, UPPER),
  row("cap", "sound-stop", "stop", "hmm-", 1, 1, [0, 0], [0, 0], 8),
  row("cap", "fine-pore", "run", "mhm-", 1, 1, [0, 0], [0.18, 0.32], 2),
  row("cap", "tight-toe", "toe", "hmm-", 1, 1, [14, 36], [0.45, 1.1], 2),
  row("cap", "coarse-ripple", "run", "mll-", 1, 1, [14, 30], [0.8, 1.6], 2),
  row("cap", "chalk-mark", "plate", "mmm-", 1, 1, [10, 18], [0.4, 1.1], 1, { half: 8, variants: ["stroke", "tick"] }),
  row("cap", "scratch", "plate", "mmm-", 1, 1, [18, 44], [0.02, 0.06], 1, { half: 6, variants: ["along"] }),
  row("cap", "rust-patch", "plate", "mmm-", 1, 1, [10, 24], [0.4, 1.1], 1, { half: 7 }),
  row("cap", "removed-spatter", "plate", "hhm-", 1, 1, [10, 28], [0.5, 1.3], 1),
  row("cap", "glass-spots", "run", "-hm-", 1, 1, [8, 30], [0.6, 2], 1),
];
