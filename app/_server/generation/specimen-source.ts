import type { JointKind } from "@/lib/weld";
import type { SpecimenProgress } from "@/prisma/stores/specimens";

/** Where use cases get specimens from. Ids are opaque: nothing about a specimen can be read off its id. */
export interface SpecimenSource {
  /** A specimen of that kind that is ready now, taken off the shelf for good; null where the shelf is empty. */
  takeReady(kind: JointKind): Promise<{ readonly specimenId: string } | null>;
  /** Orders one that is kept for whoever asks, ahead of the stock. Returns at once; `stageOf` tells how far it is. */
  requestOne(kind: JointKind): Promise<{ readonly specimenId: string }>;
  stageOf(specimenId: string): Promise<SpecimenProgress>;
}
