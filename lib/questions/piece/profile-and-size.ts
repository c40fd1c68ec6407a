import { twoStatements } from "./fillet-statements";

export const profileAndSize = twoStatements(
  "profile-and-size",
  "profile",
  "size",
  "What is right to state of this fillet: the profile of its face along most of the weld, and whether the size on the drawing is met along all of it?",
);
