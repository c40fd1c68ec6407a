/** Charts are drawn at this width and shown as wide as there is room, in units of the drawing. */
export const WIDTH = 720;

/** Lines and letters of an axis. */
export const AXIS = {
  stroke: "var(--color-ink-2)",
  tickStroke: "var(--color-ink-2)",
  tickLabelProps: { fill: "var(--color-ink-2)", fontSize: 12, fontFamily: "inherit" },
  labelProps: { fill: "var(--color-ink-2)", fontSize: 12, fontFamily: "inherit", textAnchor: "middle" as const },
} as const;
