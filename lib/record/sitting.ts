import { z } from "zod";
import { SECTIONS } from "../results";
import {
  ATTEMPT_KINDS,
  type PlacedAttempt,
  RUN_STATES,
  type SectionRun,
  SITTING_STATES,
  type Sitting,
} from "../sittings";
import { iso, isoOrNull, moment } from "./common";

const given = { minutes: z.number(), at: moment, reason: z.string() };
const pause = z.strictObject({ from: moment, to: moment.nullable() });

const sectionSchema = z.strictObject({
  id: z.string(),
  piece: z.string(),
  section: z.enum(SECTIONS),
  /** The second piece of a section just short of its pass mark. */
  isSecondPiece: z.boolean(),
  state: z.enum(RUN_STATES),
  startedAt: moment.nullable(),
  closedAt: moment.nullable(),
  closedBy: z.enum(["learner", "clock", "tutor"]).nullable(),
  minutes: z.number(),
  timeFactor: z.number(),
  factorChanges: z.array(z.strictObject({ factor: z.number(), at: moment, reason: z.string() })),
  addedMinutes: z.array(z.strictObject(given)),
  reopenings: z.array(z.strictObject(given)),
  pauses: z.array(pause),
  void: z.strictObject({ at: moment, reason: z.string() }).nullable(),
  marksSeenAt: moment.nullable(),
  /** What it stands for in the rounds of its paper, as far as whoever made the record may know. */
  attempt: z.enum(ATTEMPT_KINDS).nullable(),
  round: z.int().nullable(),
});

/** One sitting of the learner, void sections included and marked as such. */
export const recordedSittingSchema = z.strictObject({
  id: z.string(),
  paper: z.string(),
  class: z.string(),
  state: z.enum(SITTING_STATES),
  plannedAt: moment,
  begunAt: moment.nullable(),
  closedAt: moment.nullable(),
  releasedAt: moment.nullable(),
  pauses: z.array(pause),
  void: z.strictObject({ at: moment, reason: z.string() }).nullable(),
  sections: z.array(sectionSchema),
});
export type RecordedSitting = z.infer<typeof recordedSittingSchema>;

export interface SittingToRecord {
  readonly sitting: Sitting;
  readonly className: string;
  readonly runs: readonly {
    readonly run: SectionRun;
    readonly practiceId: string;
    readonly placed: Pick<PlacedAttempt, "kind" | "round"> | null;
  }[];
}

export const recordedSitting = ({ sitting, className, runs }: SittingToRecord): RecordedSitting => ({
  id: sitting.id,
  paper: sitting.paper.name,
  class: className,
  state: sitting.state,
  plannedAt: iso(sitting.plannedAt),
  begunAt: isoOrNull(sitting.begunAt),
  closedAt: isoOrNull(sitting.closedAt),
  releasedAt: isoOrNull(sitting.releasedAt),
  pauses: sitting.pauses.map(recordedPause),
  void: recordedVoid(sitting.voided),
  sections: runs.map(({ run, practiceId, placed }) => ({
    id: run.id,
    piece: practiceId,
    section: run.section,
    isSecondPiece: run.isBorderline,
    state: run.state,
    startedAt: isoOrNull(run.startedAt),
    closedAt: isoOrNull(run.closedAt),
    closedBy: run.closedBy,
    minutes: run.minutes,
    timeFactor: run.factor,
    factorChanges: run.factorChanges.map(({ factor, at, reason }) => ({ factor, at: iso(at), reason })),
    addedMinutes: run.addedMinutes.map(recordedMinutes),
    reopenings: run.reopenings.map(recordedMinutes),
    pauses: run.pauses.map(recordedPause),
    void: recordedVoid(run.voided),
    marksSeenAt: isoOrNull(run.marksSeenAt),
    attempt: placed?.kind ?? null,
    round: placed?.round ?? null,
  })),
});

const recordedPause = ({ from, to }: { readonly from: Date; readonly to: Date | null }) => ({
  from: iso(from),
  to: isoOrNull(to),
});

const recordedMinutes = ({ minutes, at, reason }: SectionRun["addedMinutes"][number]) => ({
  minutes,
  at: iso(at),
  reason,
});

const recordedVoid = (voided: SectionRun["voided"]) => voided && { at: iso(voided.at), reason: voided.reason };
