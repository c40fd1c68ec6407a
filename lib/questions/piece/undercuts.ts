import type { ImperfectionType } from "../../imperfections";
import type { TruthItem } from "../../specimen";

const UNDERCUTS: readonly ImperfectionType[] = ["continuous-undercut", "intermittent-undercut"];

/** Undercut in the plates along the toes, not between runs and not beside a root. */
export const isUndercut = ({ type }: TruthItem): boolean => UNDERCUTS.includes(type);
