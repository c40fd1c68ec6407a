/** What a drag on the plate does: moves it, draws an indication, lays the rule, or places the gauge. */
export type Tool = "hand" | "mark" | "rule" | "gauge";
