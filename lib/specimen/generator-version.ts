/** Changes whenever the same seed would give another surface or another truth. */
export const GENERATOR_VERSION = "3";
