"use client";
import type { TrayKind } from "@/lib/bench";
import { GAUGES } from "@/lib/gauges";
import { TRAY_WORDS } from "./gauge-words";

export interface GaugeTrayProps {
  readonly kinds: readonly TrayKind[];
  /** The one that is out on the face in sight. */
  readonly out: TrayKind | null;
  readonly onTake: (kind: TrayKind) => void;
  readonly onPutAway: () => void;
}

/** The tray at the lower edge of the bench: a gauge is taken out of it, and put back with the same button. */
export function GaugeTray({ kinds, out, onTake, onPutAway }: GaugeTrayProps) {
  return (
    <div
      role="toolbar"
      aria-label="Gauge tray"
      className="gauge-tray flex shrink-0 items-center gap-1 overflow-x-auto border-bench-line border-t bg-bench-2 p-1"
    >
      {!out && <p className="hidden px-2 text-bench-dim text-sm leading-tight sm:block">Take a gauge to the cursor:</p>}
      {kinds.map((kind, n) => (
        <button
          key={kind}
          type="button"
          aria-pressed={kind === out}
          title={`${GAUGES[kind].name}: ${GAUGES[kind].measures} (${n + 1})`}
          className="flex min-h-11 min-w-[5.5rem] flex-1 items-center justify-center gap-2 rounded border border-bench-line px-2 text-bench-text text-sm hover:bg-bench-line aria-pressed:bg-lamp aria-pressed:text-ink"
          onClick={() => (kind === out ? onPutAway() : onTake(kind))}
        >
          <svg
            viewBox="0 0 24 24"
            className="size-6 shrink-0"
            fill="none"
            stroke="currentColor"
            strokeWidth="1.6"
            strokeLinecap="round"
            strokeLinejoin="round"
            aria-hidden="true"
          >
            <path d={ICONS[kind]} />
          </svg>
          {TRAY_WORDS[kind]}
        </button>
      ))}
    </div>
  );
}

/** Each by what stands on the metal and what comes to it. */
const ICONS: Readonly<Record<TrayKind, string>> = {
  "steel-rule": "M2 9h20v7H2zM6 9v3M10 9v4M14 9v3M18 9v4",
  caliper: "M3 20h14V2h4v21H3zM3 9h18v6h-7v-3H3zM5 13h8v6H5",
  "height-gauge": "M3 20v-7h18v7M3 13v-2h18v2M12 4v12M10 4h4M2 21h3M19 21h3M8 21c1-4 7-4 8 0",
  "depth-gauge": "M11 14v-2h11v8h-2v-6h-5v6h-2v-6zM7 4v17l-1 2M3 6a5 5 0 0 1 8 0M7 9l3-3M11 14H4",
  "hook-gauge": "M6 3v16M4 3h4M6 9h15v9h-7v-5H6M2 20h8M13 19h9",
  "fillet-gauge": "M3 3v18h18M3 11h9l5 5v5M12 6l5-3M17 21v-4",
  "fillet-blades": "M3 3v18h18M7 17V9l9 8zM14 5h7v7",
  "profile-comb": "M3 4h18v4H3zM5 8v12M8 8v11M11 8v8M14 8v8M17 8v11M20 8v12",
};
