import { type FeatureRow, row } from "./row";

/** Harmless features and clutter that tempt to a false call. Likelihoods are common practice, no source. */
export const NEUTRAL_ROWS: readonly FeatureRow[] = [
  row("cap", "shallow-undercut", "toe", "hmml", 1, 1, [14, 30], [0.1, 0.18], 3),
  row("cap", "light-grinding", "plate", "mmmm", 1, 1, [14, 26], [0.08, 0.14], 5, { half: 4 }),
  row("cap", "sound-stop", "stop", "hmmm", 1, 1, [0, 0], [0, 0], 8),
  row("root", "light-grinding", "plate", "mmmm", 1, 1, [14, 26], [0.08, 0.14], 5, { half: 4 }),
  row("root", "sound-stop", "stop", "hmmm", 1, 1, [0, 0], [0, 0], 6),
  row("cap", "fine-pore", "run", "mhmm", 1, 1, [0, 0], [0.2, 0.42], 2),
  row("root", "fine-pore", "run", "mhmm", 1, 1, [0, 0], [0.2, 0.42], 2),
];
