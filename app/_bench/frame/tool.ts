/** What a drag on the plate does: moves it, draws an indication, or places the gauge. */
export type Tool = "hand" | "mark" | "gauge";
