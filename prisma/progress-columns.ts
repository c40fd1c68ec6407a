import {
  learnerInOrderSchema,
  learnerSchema,
  overviewSchema,
  pieceTallySchema,
  sectionObservationsSchema,
  typeTallySchema,
} from "@/lib/progress";
import { column } from "./columns";

// of another version, none of these is ever read: it is made anew
export const observationsColumn = column(sectionObservationsSchema);
export const sectionTallyColumn = column(pieceTallySchema);
export const typeTallyColumn = column(typeTallySchema);
export const overviewColumn = column(overviewSchema);
export const learnerColumn = column(learnerInOrderSchema);
/** The learner by whom a piece was chosen, kept as a value of that day. */
export const chosenForColumn = column(learnerSchema);
