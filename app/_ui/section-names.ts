import type { MarkedSection } from "@/lib/results";
import type { Face } from "@/lib/weld";

/** Sections as people read them; the faces by themselves only in marks of before both were marked together. */
export const SECTION_NAMES: Readonly<Record<MarkedSection, string>> = {
  plate: "Butt plate",
  cap: "Cap face",
  root: "Root face",
};

/** The same within a sentence. */
export const SECTION_WORDS: Readonly<Record<MarkedSection, string>> = {
  plate: "butt plate",
  cap: "cap face",
  root: "root face",
};

export const FACE_NAMES: Readonly<Record<Face, string>> = { cap: "Cap face", root: "Root face" };
export const FACE_WORDS: Readonly<Record<Face, string>> = { cap: "cap face", root: "root face" };
