/** What lies on a workshop's plates, tempts to a false call and is no imperfection. */
export const CLUTTER = [
  "chalk-mark",
  "pen-mark",
  "scratch",
  "mill-scale-edge",
  "rust-patch",
  "tight-toe",
  "coarse-ripple",
  "removed-spatter",
  "glass-spots",
] as const;
export type Clutter = (typeof CLUTTER)[number];

/** One kind of clutter in words for people who took it for an imperfection. */
export interface ClutterWords {
  /** With its article, to stand inside a sentence. */
  readonly name: string;
  /** What is really there, and that nothing is wrong. */
  readonly there: string;
  /** How to tell it from an imperfection the next time. */
  readonly tell: string;
}

/** The words for each kind of clutter. How to tell them apart is common practice, no source. */
export const CLUTTER_WORDS: Readonly<Record<Clutter, ClutterWords>> = {
  "chalk-mark": {
    name: "a chalk mark",
    there: "There is a chalk mark here; nothing is wrong with the metal.",
    tell: "Chalk sits on the high grain only, throws no shadow and wipes off.",
  },
  "pen-mark": {
    name: "a pen mark",
    there: "There is a mark of paint or ink here; nothing is wrong with the metal.",
    tell: "It has one colour whatever the pen went over, weld or plate, and throws no shadow.",
  },
  scratch: {
    name: "a scratch",
    there: "There is a scratch from handling here; it is shallow and is not recorded.",
    tell: "A scratch is straight, and the torch lights it to its bottom; a crack stays dark and follows its own way.",
  },
  "mill-scale-edge": {
    name: "the edge of mill scale",
    there:
      "Mill scale has flaked off the plate here; the edge of what is left looks like a groove, and the steel is sound.",
    tell: "Turn the torch: the step is hardly thicker than paper, and scale lies on one side of it only.",
  },
  "rust-patch": {
    name: "a patch of rust",
    there: "There is rust on the surface here; the metal under it is sound.",
    tell: "Rust blooms outward without an edge, and has no depth of its own.",
  },
  "tight-toe": {
    name: "a tight toe",
    there: "The toe is tight and dark here, but it is fused and has no depth.",
    tell: "Look along it in low light from both sides: no groove takes a shadow, and no lip hangs over the plate.",
  },
  "coarse-ripple": {
    name: "coarse ripple",
    there: "The ripples are coarse here, but the weld is sound and even in height.",
    tell: "Every ripple runs through from toe to toe; at a bad restart one of them stands out as a step.",
  },
  "removed-spatter": {
    name: "marks of removed spatter",
    there: "Spatter has been chipped off here; the spots that are left are flush with the plate.",
    tell: "A pore keeps its shadow as the torch goes round it; a spot only changes from bright to dark.",
  },
  "glass-spots": {
    name: "spots of silica glass",
    there: "There are small spots of silica glass on the weld here; they come with the wire and are not recorded.",
    tell: "They stand on the metal as thin brown islands, while slag fills hollows and a pore goes down into it.",
  },
};
