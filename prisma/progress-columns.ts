import { overviewSchema, pieceTallySchema, sectionObservationsSchema, typeTallySchema } from "@/lib/progress";
import { column } from "./columns";

// of another version, none of these is ever read: it is made anew
export const observationsColumn = column(sectionObservationsSchema);
export const sectionTallyColumn = column(pieceTallySchema);
export const typeTallyColumn = column(typeTallySchema);
export const overviewColumn = column(overviewSchema);
