import { z } from "zod";
import type { Person } from "../workshop";

const NOTES_MAX_LENGTH = 2000;

/** What a tutor writes about a class: its name, 1 to 60 characters after trimming, and notes that only tutors read. */
export const classDetailsSchema = z.object({
  name: z.string().trim().min(1, "Give the class a name.").max(60, "Keep the name under 60 characters."),
  notes: z.string().trim().max(NOTES_MAX_LENGTH, `Keep the notes under ${NOTES_MAX_LENGTH} characters.`),
});
export type ClassDetails = z.infer<typeof classDetailsSchema>;

/** Learners that are taught together; on screen a class. */
export interface ClassGroup extends ClassDetails {
  readonly id: string;
  /** What learners type to enter by themselves; null where that is switched off. */
  readonly joinCode: string | null;
  readonly createdAt: Date;
  /** An archived class is only read. */
  readonly archivedAt: Date | null;
  /** Whoever made it comes first. */
  readonly tutors: readonly Pick<Person, "id" | "name">[];
  /** How many are in it now. */
  readonly memberCount: number;
}

/** A learner in a class, or one who was. */
export interface ClassMember {
  readonly person: Person;
  readonly joinedAt: Date;
  readonly leftAt: Date | null;
  readonly timeFactor: number;
}
