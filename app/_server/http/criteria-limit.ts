/** Three hundred rows, each with the longest notes, take less. */
export const MAX_CRITERIA_BYTES = 1_000_000;
