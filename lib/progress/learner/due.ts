import { z } from "zod";

/** When a type is to be practised again. */
export const dueSchema = z.strictObject({
  /** Days from the last practice to the next. */
  days: z.number().positive(),
  /** Milliseconds since 1970. */
  lastAt: z.int(),
});
export type Due = z.infer<typeof dueSchema>;

/** Days between practices: the first time, and at the least and the most; common practice, no source. */
const DAYS = { first: 3, least: 1, most: 60 };
/** From this share of success on the time doubles, below the other it halves. */
const SUCCESS = { doubles: 0.8, halves: 0.6 };
const DAY = 86_400_000;

/**
 * After a practice of a type with a share of success, 0 to 1. The first practice sets three days; each later one doubles them from
 * 80 % on and halves them below 60 %, up to 60 days.
 * @param at milliseconds since 1970
 */
export function afterPractice(due: Due | undefined, success: number, at: number): Due {
  if (!due) return { days: DAYS.first, lastAt: at };
  const factor = success >= SUCCESS.doubles ? 2 : success < SUCCESS.halves ? 0.5 : 1;
  return { days: Math.min(DAYS.most, Math.max(DAYS.least, due.days * factor)), lastAt: Math.max(due.lastAt, at) };
}

/** Milliseconds since 1970. */
export const dueAt = ({ days, lastAt }: Due): number => lastAt + days * DAY;

/** How much it is due: 0 before its day, 1 on it, up to 2 once as much time again has gone. */
export function dueness(due: Due | undefined, now: number): number {
  if (!due || now < dueAt(due)) return 0;
  return Math.min(2, (now - due.lastAt) / (due.days * DAY));
}
