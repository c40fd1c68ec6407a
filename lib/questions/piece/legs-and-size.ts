import { twoStatements } from "./fillet-statements";

export const legsAndSize = twoStatements(
  "legs-and-size",
  "asymmetry",
  "size",
  "What is right to state of this fillet: whether its legs differ by 2 mm or more over 8 mm of the weld, and whether the size on the drawing is met along all of it?",
);
