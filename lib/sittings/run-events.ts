import type { WritingWindow } from "../practice";
import type { Report } from "../report";

/** Who of the tutors did something, and why; both are kept. */
interface ByTutor {
  /** Id of the tutor. */
  readonly by: string;
  readonly reason: string;
}

/** What happens to a run. `madeAt` is when the learner did it, by the server's clock as the browser knows it. */
export type RunEvent =
  | { readonly kind: "start"; readonly windowId: string }
  | { readonly kind: "take-over"; readonly windowId: string }
  | {
      readonly kind: "save";
      readonly sequence: number;
      readonly window: WritingWindow;
      readonly madeAt: Date;
      /** With the answers to the questions, which come once the report is closed. */
      readonly report: Report;
    }
  | { readonly kind: "close-report"; readonly windowId: string; readonly madeAt: Date }
  | { readonly kind: "hand-in"; readonly windowId: string; readonly madeAt: Date }
  | { readonly kind: "see-marks" }
  | { readonly kind: "tick" }
  | { readonly kind: "pause" }
  | { readonly kind: "resume" }
  | { readonly kind: "close" }
  | ({ readonly kind: "add-time"; readonly minutes: number } & ByTutor)
  | ({ readonly kind: "change-factor"; readonly factor: number } & ByTutor)
  | ({ readonly kind: "re-open"; readonly minutes: number } & ByTutor)
  | ({ readonly kind: "void" } & ByTutor);

/** What an event of one kind carries. */
export type RunEventOf<Kind extends RunEvent["kind"]> = Extract<RunEvent, { kind: Kind }>;
