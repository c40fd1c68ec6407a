"use client";
import { useMemo, useRef, useState } from "react";
import { type GaugeOut, type Goal, hasScale, isStanding } from "@/lib/bench";
import { contactAt, drawBlade, drawComb, drawGauge, drawnBack, explainReading, GAUGES, pressComb } from "@/lib/gauges";
import type { GaugeHandling } from "../frame/use-gauge";
import { GaugeElevation } from "./gauge-elevation";
import { GaugeSettings } from "./gauge-settings";
import { bladeWords, gaugeWords } from "./gauge-words";
import { ReadingLens } from "./reading-lens";
import { ReadingSlip } from "./reading-slip";
import { useSlide } from "./use-slide";

export interface GaugePanelProps {
  readonly gauge: GaugeHandling;
  readonly out: GaugeOut;
  readonly mayAskReading: boolean;
  readonly goals: readonly Goal[] | null;
  readonly onTake: (goal: Goal, reading: number) => void;
  /** Back to the plate. */
  readonly onEscape: () => void;
}

/** Where there is no room for both, one is shown at a time. */
type Leaf = "read" | "set";
const LEAVES: readonly (readonly [Leaf, string])[] = [
  ["set", "Set it"],
  ["read", "Read it"],
];

/** The gauge that is out: from the side, its scale under the lens, its settings, and the slip to write on. */
export function GaugePanel({ gauge, out, mayAskReading, goals, onTake, onEscape }: GaugePanelProps) {
  const { placement } = out;
  const { range, name } = GAUGES[placement.kind];
  const { standing, trial, position, send } = gauge;
  const [shows, setShows] = useState<Leaf>("read");
  const isRefused = (standing ?? trial)?.ok === false;
  const question = mayAskReading ? questionOf(gauge) : null;
  const explained = question && out.isExplained ? explanationOf(gauge, out) : null;
  return (
    <section
      aria-label={name}
      data-gauge={placement.kind}
      className="gauge-panel relative shrink-0 overflow-y-auto border-bench-line border-t bg-bench-2 p-2 text-bench-text"
      onKeyDown={(event) => event.key === "Escape" && onEscape()}
    >
      <p className="mb-2 min-h-5 text-sm leading-tight">
        <b className="mr-2">{name}</b>
        <span role="status" data-gauge-says="" className={isRefused ? "text-lamp" : "text-bench-text"}>
          {gaugeWords(out, standing, trial, position)}
        </span>
      </p>
      <div className="gauge-parts" data-shows={shows} data-lies={placement.kind === "steel-rule" ? "" : undefined}>
        {placement.kind !== "steel-rule" && <SideView gauge={gauge} out={out} />}
        {placement.kind !== "steel-rule" && hasScale(placement.kind) && (
          <fieldset className="gauge-leaves gap-1">
            <legend className="sr-only">What to do with it</legend>
            {LEAVES.map(([leaf, word]) => (
              <button
                key={leaf}
                type="button"
                aria-pressed={shows === leaf}
                className="h-11 flex-1 rounded border border-bench-line text-sm aria-pressed:border-lamp aria-pressed:bg-bench-line"
                onClick={() => setShows(leaf)}
              >
                {word}
              </button>
            ))}
          </fieldset>
        )}
        <GaugeSettings placement={placement} send={send} />
        {range && hasScale(placement.kind) && (
          <ReadingSlip
            key={placement.kind}
            read={out.read}
            lowest={range.lowest}
            highest={range.highest}
            goals={goals}
            explanation={explained}
            question={question}
            onRead={(value) => send({ kind: "read", value })}
            onAsk={() => send({ kind: "explain", isExplained: !out.isExplained })}
            onTake={(goal) => out.read !== null && onTake(goal, out.read)}
          />
        )}
      </div>
    </section>
  );
}

/** What a learner may ask of a gauge that is set down as it should be. */
function questionOf({ standing, trial }: GaugeHandling): string | null {
  if (standing?.ok) return "What does it read?";
  return trial?.ok ? "How does it fit?" : null;
}

function explanationOf({ standing, trial, position }: GaugeHandling, { placement }: GaugeOut): string | null {
  if (standing?.ok) return explainReading(placement.kind, position).words;
  return trial?.ok ? bladeWords(trial) : null;
}

/** The gauge on the metal, and its scale enlarged; a drag, the wheel or keys on either slide the moving part. */
export function SideView({ gauge, out }: Pick<GaugePanelProps, "gauge" | "out">) {
  const { heights, standing, trial, position, push } = gauge;
  const { placement } = out;
  const area = useRef<HTMLDivElement>(null);
  const slide = useSlide(area, push);
  const noise = standing?.ok ? standing.noise : 0;
  const drawing = useMemo(
    () => (isStanding(placement) ? drawGauge(placement, position, noise) : null),
    [placement, position, noise],
  );
  const largest = useMemo(() => {
    if (isStanding(placement)) return drawGauge(placement, drawnBack({ placement }), 0);
    if (placement.kind === "fillet-blades") return drawBlade(placement);
    return heights && drawComb(pressComb(heights, placement));
  }, [placement, heights]);
  if (!heights || !largest) return <p className="text-bench-dim text-sm">The plate is not here yet.</p>;
  const shown = drawing ?? largest;
  const seated = standing ?? trial;
  const pose = placement.kind === "profile-comb" ? LEVEL : (seated?.seat?.pose ?? null);
  const elevation = (
    <GaugeElevation
      heights={heights}
      placement={placement}
      drawing={shown}
      largest={largest}
      pose={pose}
      label={`The ${GAUGES[placement.kind].name.toLowerCase()} from the side, on the outline of the work`}
    />
  );
  if (!shown.lens) return <div className="gauge-side">{elevation}</div>;
  const canSlide = standing?.ok === true;
  const isClear = canSlide && contactAt(standing, position) === "clear";
  return (
    <div
      ref={area}
      role="slider"
      tabIndex={0}
      aria-label="Moving part"
      aria-orientation="vertical"
      aria-disabled={!canSlide}
      aria-valuemin={0}
      aria-valuemax={1}
      aria-valuenow={isClear || !canSlide ? 0 : 1}
      aria-valuetext={!canSlide ? "does not stand" : isClear ? "clear of the metal" : "touches the metal"}
      data-slide=""
      className="gauge-side gauge-slide grid cursor-ns-resize touch-none select-none gap-2"
      {...slide}
    >
      {elevation}
      <ReadingLens drawing={shown} lens={shown.lens} isExplained={canSlide && out.isExplained} />
    </div>
  );
}

/** A comb is held square to the plate. */
const LEVEL = { along: 0, height: 0, tilt: 0 } as const;
