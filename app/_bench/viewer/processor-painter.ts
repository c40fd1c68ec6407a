import type { Painter } from "./painter";

export function createProcessorPainter(): Painter {
  throw new Error("this browser cannot draw with WebGL2");
}
