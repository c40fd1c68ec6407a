"use client";
import type { ReactNode } from "react";
import type { JointKind } from "@/lib/weld";
import type { Tool } from "./tool";

export interface ToolRailProps {
  readonly kind: JointKind;
  readonly tool: Tool;
  readonly isLensHeld: boolean;
  /** Whether there is one: a paper may take it away. */
  readonly hasLens: boolean;
  /** Whether there is anything left to mark. */
  readonly mayMark: boolean;
  readonly onTool: (tool: Tool) => void;
  readonly onLens: () => void;
  readonly onTurn: () => void;
  /** Shows the ends of the joint, where there is something to see on them. */
  readonly onEnds: () => void;
  readonly onZoom: (factor: number) => void;
  readonly onWhole: () => void;
  readonly onKeys: () => void;
}

/** The hand tools at the left edge of the bench: a sign and a word each. */
export function ToolRail(props: ToolRailProps) {
  const { kind, tool, isLensHeld, hasLens, mayMark, onTool, onLens, onTurn, onEnds, onZoom, onWhole, onKeys } = props;
  return (
    <nav
      aria-label="Tools"
      className="tool-rail flex shrink-0 gap-1 overflow-auto border-bench-line border-r bg-bench-2 p-1"
    >
      <RailButton word="Move" isPressed={tool === "hand"} onClick={() => onTool("hand")} title="Drag the plate (V)">
        <path d="M12 3v18M3 12h18M12 3l-3 3M12 3l3 3M12 21l-3-3M12 21l3-3M3 12l3-3M3 12l3 3M21 12l-3-3M21 12l-3 3" />
      </RailButton>
      {mayMark && (
        <RailButton
          word="Mark"
          isPressed={tool === "mark"}
          onClick={() => onTool("mark")}
          title="Drag along the weld to mark an indication, tap for a point (M)"
        >
          <path d="M7 6H4v12h3M17 6h3v12h-3M9 12h6" />
        </RailButton>
      )}
      <RailButton word="Gauges" isPressed={tool === "gauge"} onClick={() => onTool("gauge")} title="The gauge tray (G)">
        <path d="M3 6h18v5h-3v6h-2v-6h-4v6h-2v-6H7v9l-1.5 2L4 20v-9H3z" />
      </RailButton>
      {hasLens && (
        <RailButton word="Lens" isPressed={isLensHeld} onClick={onLens} title="Hold the lens (L)">
          <circle cx="10" cy="10" r="6.5" />
          <path d="M15 15l6 6" />
        </RailButton>
      )}
      <RailButton
        word="Turn"
        onClick={onTurn}
        title={kind === "butt" ? "Turn the plate over (F)" : "Turn it: along the corner, square on either plate (F)"}
      >
        <path d="M3 12h18M6 8c2-5 10-5 12 0M18 8l1-3M18 8l-3-1M18 16c-2 5-10 5-12 0M6 16l-1 3M6 16l3 1" />
      </RailButton>
      {kind === "fillet" && (
        <RailButton word="Ends" onClick={onEnds} title="The ends of the joint, and the feeler (T)">
          <path d="M3 19h18M9 19V4h4v15M13 14l5 5" />
        </RailButton>
      )}
      <hr className="border-bench-line" />
      <RailButton word="Closer" onClick={() => onZoom(1.5)} title="Closer (+)">
        <path d="M12 5v14M5 12h14" />
      </RailButton>
      <RailButton word="Away" onClick={() => onZoom(1 / 1.5)} title="Further away (-)">
        <path d="M5 12h14" />
      </RailButton>
      <RailButton word="Whole" onClick={onWhole} title="All of it (0)">
        <path d="M3 7h18v10H3zM3 12h18" />
      </RailButton>
      <RailButton word="Keys" onClick={onKeys} title="What the keys do (?)">
        <path d="M4 6h16v12H4zM8 10h.01M12 10h.01M16 10h.01M8 14h8" />
      </RailButton>
    </nav>
  );
}

interface RailButtonProps {
  readonly word: string;
  readonly title: string;
  readonly isPressed?: boolean;
  readonly onClick: () => void;
  readonly children: ReactNode;
}

function RailButton({ word, title, isPressed, onClick, children }: RailButtonProps) {
  return (
    <button
      type="button"
      title={title}
      aria-pressed={isPressed}
      onClick={onClick}
      className="flex min-h-12 flex-col items-center justify-center gap-0.5 rounded text-[11px] text-bench-text hover:bg-bench-line aria-pressed:bg-lamp aria-pressed:text-ink"
    >
      <svg
        viewBox="0 0 24 24"
        className="size-5"
        fill="none"
        stroke="currentColor"
        strokeWidth="1.8"
        strokeLinecap="round"
        strokeLinejoin="round"
        aria-hidden="true"
      >
        {children}
      </svg>
      {word}
    </button>
  );
}
