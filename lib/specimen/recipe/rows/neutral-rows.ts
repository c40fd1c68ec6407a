import { FACES, type Face } from "../../../weld";
import { type FeatureRow, row } from "./row";

/** Harmless features and clutter that tempt to a false call. Likelihoods are common practice, no source. */
export const NEUTRAL_ROWS: readonly FeatureRow[] = [
  row("cap", "shallow-undercut", "toe", "hmml", 1, 1, [14, 30], [0.1, 0.18], 3),
  row("cap", "light-grinding", "plate", "mmmm", 1, 1, [14, 26], [0.08, 0.14], 5, { half: 4 }),
  row("cap", "sound-stop", "stop", "hmmm", 1, 1, [0, 0], [0, 0], 8),
  row("root", "light-grinding", "plate", "mmmm", 1, 1, [14, 26], [0.08, 0.14], 5, { half: 4 }),
  row("root", "sound-stop", "stop", "hmmm", 1, 1, [0, 0], [0, 0], 6),
  row("cap", "fine-pore", "run", "mhmm", 1, 1, [0, 0], [0.18, 0.33], 2),
  row("root", "fine-pore", "run", "mhmm", 1, 1, [0, 0], [0.18, 0.33], 2),
  row("cap", "dressed-stop", "stop", "mmmm", 1, 1, [0, 0], [0, 0], 14),
  row("root", "dressed-stop", "stop", "llll", 1, 1, [0, 0], [0, 0], 14),
  ...FACES.flatMap(clutterOn),
];

/** Clutter lies on both faces alike. */
function clutterOn(face: Face): FeatureRow[] {
  return [
    row(face, "chalk-mark", "plate", "mmmm", 0.6, 1, [10, 18], [0.4, 1.1], 1, {
      half: 8,
      variants: ["stroke", "tick", "arrow", "circle"],
    }),
    row(face, "chalk-mark", "toe", "mmmm", 0.4, 1, [10, 22], [0.4, 1.1], 1, {
      variants: ["stroke", "circle", "length-tick"],
    }),
    row(face, "pen-mark", "weld", "llll", 1, 1, [4, 8], [0.4, 1.2], 1, { variants: ["line-across"] }),
    row(face, "pen-mark", "plate", "llll", 1, 1, [14, 22], [0.4, 1.2], 1, { half: 6, variants: ["number", "stroke"] }),
    row(face, "scratch", "plate", "mmmm", 0.6, 1, [18, 50], [0.02, 0.06], 1, {
      half: 6,
      variants: ["along", "along", "chain"],
    }),
    row(face, "scratch", "toe", "mmmm", 0.4, 1, [10, 22], [0.03, 0.06], 1, { variants: ["across"] }),
    row(face, "mill-scale-edge", "toe", "mmmm", 1, 1, [22, 50], [0.02, 0.05], 1),
    row(face, "rust-patch", "plate", "mmmm", 0.6, 1, [10, 24], [0.4, 1.1], 1, { half: 7 }),
    row(face, "rust-patch", "toe", "mmmm", 0.4, 1, [8, 20], [0.4, 1.1], 1),
    row(face, "tight-toe", "toe", "hmml", 1, 1, [14, 40], [0.45, 1.2], 2),
    row(face, "coarse-ripple", "run", "mllm", 1, 1, [14, 34], [0.8, 1.8], 2),
    row(face, "removed-spatter", "plate", "hhml", 1, 1, [10, 32], [0.5, 1.4], 1),
    row(face, "glass-spots", "run", "-hmm", 1, 1, [8, 34], [0.6, 2], 1),
  ];
}
