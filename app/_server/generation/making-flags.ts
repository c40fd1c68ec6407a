/**
 * How the engine runs where specimens are made; for the whole process, set before the first face. Feedback for the compiler is
 * gathered from the first call on: a function that is called once a face would otherwise never get any, and what it calls for
 * every pixel would start cold each time. And what belongs to a type of imperfection is kept, however long none of it was made:
 * it would be compiled anew for the next one.
 */
export const MAKING_FLAGS = ["--no-lazy-feedback-allocation", "--no-flush-bytecode"] as const;
