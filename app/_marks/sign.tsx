import type { LineKind } from "@/lib/results";

interface SignLook {
  readonly letter: string;
  readonly words: string;
  readonly tone: string;
  readonly shape: "disc" | "half" | "ring" | "wedge" | "dash";
}

const FOUND: SignLook = { letter: "F", words: "found", tone: "text-found", shape: "disc" };
const PARTLY: SignLook = { letter: "P", words: "partly right", tone: "text-partly", shape: "half" };
const LEFT: SignLook = { letter: "·", words: "not recorded", tone: "text-ink-2", shape: "dash" };

/** Signs of our own: told apart by shape and letter as well as by colour, so they survive a grey print. */
export const SIGNS: Readonly<Record<LineKind, SignLook>> = {
  found: FOUND,
  partly: PARTLY,
  split: { ...PARTLY, words: "found in pieces" },
  merged: { ...PARTLY, words: "several in one" },
  missed: { letter: "M", words: "missed", tone: "text-missed", shape: "ring" },
  "false-call": { letter: "N", words: "nothing there", tone: "text-false", shape: "wedge" },
  "neutral-called": { ...LEFT, words: "not recorded, called" },
  "neutral-left": LEFT,
  "not-counted": { ...LEFT, words: "not counted" },
  "nothing-to-find": { ...FOUND, words: "nothing to find" },
  floor: { ...LEFT, letter: "0", words: "no less than 0" },
};

export function Sign({ kind }: { readonly kind: LineKind }) {
  const { letter, words, tone, shape } = SIGNS[kind];
  const isDark = shape === "disc";
  return (
    <svg
      viewBox="0 0 28 28"
      className={`size-7 shrink-0 forced-colors:text-[CanvasText] ${tone}`}
      role="img"
      aria-label={words}
    >
      {shape === "disc" && <circle cx="14" cy="14" r="12.5" fill="currentColor" />}
      {shape === "half" && (
        <>
          <rect x="2.5" y="2.5" width="23" height="23" rx="6" fill="white" stroke="currentColor" strokeWidth="2" />
          <path d="M2.5 19.5h23v0a6 6 0 0 1-6 6h-11a6 6 0 0 1-6-6z" fill="currentColor" />
        </>
      )}
      {shape === "ring" && (
        <circle cx="14" cy="14" r="11.5" fill="white" stroke="currentColor" strokeWidth="3" strokeDasharray="5 2.6" />
      )}
      {shape === "wedge" && <path d="M14 2 27 25.5H1z" fill="white" stroke="currentColor" strokeWidth="2.4" />}
      {shape === "dash" && (
        <rect x="4" y="4" width="20" height="20" fill="none" stroke="currentColor" strokeWidth="1.2" />
      )}
      <text
        x="14"
        y={shape === "wedge" ? 22 : shape === "half" ? 17 : 18.5}
        textAnchor="middle"
        fontSize={shape === "wedge" ? 11 : 12.5}
        fontWeight="700"
        fill={isDark ? "white" : "currentColor"}
      >
        {letter}
      </text>
    </svg>
  );
}
