export const TUTOR = "maren";
/** Sign-in name of the nth learner. */
export const LEARNER = (n: number): string => `learner-${n}`;
