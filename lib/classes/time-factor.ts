import { z } from "zod";

/** What the time of a section is usually multiplied by for a learner with extra time: common practice, no source. */
export const USUAL_TIME_FACTORS = [1, 1.25, 1.5, 2] as const;

const MOST = 5;
const PROBLEM = `Write a factor from 1 to ${MOST}, with at most two decimals, for example 1.25.`;

/** What the time of a section is multiplied by for one learner: 1 to 5 in hundredths. */
export const timeFactorSchema = z
  .number(PROBLEM)
  .min(1, PROBLEM)
  .max(MOST, PROBLEM)
  .refine((factor) => Number(factor.toFixed(2)) === factor, PROBLEM);
