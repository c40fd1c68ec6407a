/**
 * How the engine runs where specimens are made; for the whole process, set before the first face. Feedback for the compiler is
 * gathered from the first call on: a function that is called once a face would otherwise never get any, and what it calls for
 * every pixel would start cold each time.
 */
export const MAKING_FLAGS = ["--no-lazy-feedback-allocation"] as const;
