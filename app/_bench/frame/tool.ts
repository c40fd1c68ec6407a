/** What a drag on the plate does: moves it, draws an indication, or handles the gauge that is out. */
export type Tool = "hand" | "mark" | "gauge";
