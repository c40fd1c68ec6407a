import type { MarkedSection } from "@/lib/results";
import type { SurfaceFace } from "@/lib/weld";

/** Sections as people read them; the faces by themselves only in marks of before both were marked together. */
export const SECTION_NAMES: Readonly<Record<MarkedSection, string>> = {
  plate: "Butt plate",
  fillet: "Fillet weld",
  cap: "Cap face",
  root: "Root face",
};

/** The same within a sentence. */
export const SECTION_WORDS: Readonly<Record<MarkedSection, string>> = {
  plate: "butt plate",
  fillet: "fillet weld",
  cap: "cap face",
  root: "root face",
};

export const FACE_NAMES: Readonly<Record<SurfaceFace, string>> = {
  cap: "Cap face",
  root: "Root face",
  fillet: "Weld face",
};
export const FACE_WORDS: Readonly<Record<SurfaceFace, string>> = {
  cap: "cap face",
  root: "root face",
  fillet: "weld face",
};
