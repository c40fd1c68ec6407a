import type { ImperfectionType } from "@/lib/imperfections";
import type { PaperPiece } from "@/lib/sittings";
import type { JointKind } from "@/lib/weld";
import type { SpecimenProgress } from "@/prisma/stores/specimens";
import type { Outlook, OutlookOrder } from "../forecast";
import type { CandidateOrder, Foreseen } from "../next/foresee-pieces";

/** Where use cases get specimens from. Ids are opaque: nothing about a specimen can be read off its id. */
export interface SpecimenSource {
  /** A specimen of that kind that is ready now, taken off the shelf for good; null where the shelf is empty. */
  takeReady(kind: JointKind): Promise<{ readonly specimenId: string } | null>;
  /**
   * Orders one that somebody waits for, before everything that is made ahead; as a paper asks for it, or for practice.
   * Returns at once; `stageOf` tells how far it is.
   */
  requestOne(kind: JointKind, asked?: PaperPiece): Promise<{ readonly specimenId: string }>;
  /**
   * Orders one that is kept for somebody who comes later; from a seed where one is given. What is ordered ahead for sittings, for
   * learners and for the stock is made in turns.
   */
  orderAhead(kind: JointKind, asked: PaperPiece, seed?: string): Promise<{ readonly specimenId: string }>;
  /** Orders one that windows are cut from in drills, behind everything else, most likely with what is wanted on it. */
  orderForDrills(wanted: readonly ImperfectionType[]): Promise<void>;
  /** Somebody has come and waits for one that was ordered ahead, also where it is being made. */
  hurry(specimenId: string): Promise<void>;
  stageOf(specimenId: string): Promise<SpecimenProgress>;
  /**
   * What can be said of pieces as a paper asks for them, from some that are drawn and not made. With a signal it is for whoever only
   * has a look: behind learners' pieces, and refused where they have turned to something else before it began.
   */
  foresee(order: OutlookOrder, look?: AbortSignal): Promise<Outlook>;
  /** What pieces would most likely have, drawn and not made: behind everybody who waits. */
  drawAhead(order: CandidateOrder): Promise<Foreseen>;
}
