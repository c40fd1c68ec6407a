export type { Point, Truth, TruthItem } from "./truth";
export { truthItemSchema, truthSchema } from "./truth-schema";
