import { z } from "zod";
import { SECTIONS } from "@/lib/results";
import { ATTEMPT_KINDS, RUN_STATES, SITTING_STATES } from "@/lib/sittings";

const moment = z.coerce.date();
const momentOrNone = moment.nullable();

const clockSchema = z.object({
  state: z.enum(["not-started", "going", "standing", "stopped"]),
  /** While it goes: when it ends. */
  deadline: momentOrNone,
  /** While it does not go: what is left, ms. */
  remaining: z.number().nullable(),
});
export type Clock = z.infer<typeof clockSchema>;

const runSchema = z.object({
  runId: z.string(),
  practiceId: z.string(),
  section: z.enum(SECTIONS),
  isBorderline: z.boolean(),
  state: z.enum(RUN_STATES),
  clock: clockSchema,
  piece: z.enum(["making", "ready", "failed"]),
  startedAt: momentOrNone,
  savedAt: momentOrNone,
  closedAt: momentOrNone,
  closedBy: z.enum(["learner", "clock", "tutor"]).nullable(),
  addedMinutes: z.number(),
  isReopened: z.boolean(),
  voidReason: z.string().nullable(),
  /** How much is written, as last saved: a count, and nothing of what it says. */
  written: z.object({ indications: z.number(), answers: z.number() }),
  mark: z
    .object({
      shown: z.number(),
      isPassed: z.boolean(),
      passMark: z.number(),
      /** As it was computed, where a tutor has acted on it. */
      computed: z.object({ shown: z.number(), isPassed: z.boolean() }).nullable(),
      reviewedAt: momentOrNone,
    })
    .nullable(),
  /** What the section stands for in the course; null until the sitting is closed and it is marked. */
  placed: z
    .object({
      kind: z.enum(ATTEMPT_KINDS),
      decidedOn: z.number().nullable(),
      outcome: z.enum(["passed", "failed", "undecided"]).nullable(),
    })
    .nullable(),
  hasSeenMarks: z.boolean(),
});
export type BoardRun = z.infer<typeof runSchema>;

const standingSchema = z.object({
  isPassed: z.boolean(),
  round: z.number(),
  due: z.array(z.object({ section: z.enum(SECTIONS), why: z.enum(["first", "re-sit", "parallel-piece"]) })),
});

const learnerSchema = z.object({
  userId: z.string(),
  name: z.string(),
  isIn: z.boolean(),
  enteredAt: momentOrNone,
  factor: z.number(),
  runs: z.array(runSchema),
  /** Where they stand in the course; null until the sitting is closed. */
  standing: standingSchema.nullable(),
});
export type BoardLearner = z.infer<typeof learnerSchema>;

const erasedSchema = z.object({
  sections: z.array(z.object({ section: z.enum(SECTIONS), isBorderline: z.boolean(), state: z.enum(RUN_STATES) })),
});
/** A learner who was erased since. */
export type ErasedLearner = z.infer<typeof erasedSchema>;

const logSchema = z.object({
  at: moment,
  actorName: z.string(),
  act: z.string(),
  subject: z.object({ kind: z.enum(["sitting", "run"]), id: z.string() }),
  reason: z.string().nullable(),
  details: z.record(z.string(), z.union([z.string(), z.number()])),
});
export type LogEntry = z.infer<typeof logSchema>;

/** A sitting as its tutors watch it. */
const boardSchema = z.object({
  sitting: z.object({
    id: z.string(),
    state: z.enum(SITTING_STATES),
    paperId: z.string(),
    paperName: z.string(),
    classId: z.string(),
    className: z.string(),
    plannedAt: moment,
    openedAt: momentOrNone,
    begunAt: momentOrNone,
    closedAt: momentOrNone,
    releasedAt: momentOrNone,
    voidReason: z.string().nullable(),
    resits: z.enum(["none", "due", "planned"]).nullable(),
    endsAt: momentOrNone,
  }),
  pieces: z.object({ all: z.number(), ready: z.number(), failed: z.number() }),
  learners: z.array(learnerSchema),
  erased: z.array(erasedSchema),
  log: z.array(logSchema),
});
export type Board = z.infer<typeof boardSchema>;

/** What comes over the line: the board and the server's time. */
export const liveBoardSchema = boardSchema.extend({ now: moment });
/** The server's time by itself. */
export const timeSchema = z.object({ now: moment });
/** A refusal of the API, with its sentence. */
export const refusedSchema = z.object({
  ok: z.literal(false),
  code: z.string(),
  message: z.string(),
  fields: z.record(z.string(), z.string()).default({}),
});

/** A board as a use case answers it, as this page reads it. */
export const readableBoard = (board: unknown): Board => boardSchema.parse(board);
