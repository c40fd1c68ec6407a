import type { Face } from "@/lib/weld";

/** The two sections of a butt plate as people read them. */
export const SECTION_NAMES: Readonly<Record<Face, string>> = { cap: "Cap face", root: "Root face" };
