/** Colours of what is drawn on the plate: a light line on a wider dark one reads on bright and on dark steel. */
export const DRAWN = {
  dark: "#0b0e10",
  light: "#f6f3ec",
  open: "#f2c14e",
  call: "#c9b3ee",
  truth: "#8fe0bd",
  ruleFill: "#d9d5c9",
  ruleInk: "#20241f",
} as const;
export const DRAWN_FONT = "Inter Variable, system-ui, sans-serif";
