"use client";
import { type ReactNode, useRef } from "react";
import type { GaugeHandling } from "@/app/_bench/frame/use-gauge";
import { SideView } from "@/app/_bench/gauge/gauge-panel";
import { GaugeSettings, Stepper } from "@/app/_bench/gauge/gauge-settings";
import type { Measuring } from "@/lib/bench";
import { GAUGES, type GaugePlacement } from "@/lib/gauges";
import { PlanView, type PlanViewProps } from "./plan-view";

export interface WorkplaceProps extends Pick<PlanViewProps, "heights" | "stations" | "read" | "isAsking"> {
  readonly gauge: GaugeHandling;
  /** How the gauge stands, in a sentence. */
  readonly says: string;
  readonly isRefused: boolean;
  /** The slip that is written on. */
  readonly children: ReactNode;
  /** What takes the room of the settings once they are of no more use. */
  readonly underPlan?: ReactNode;
}

/** A gauge that is handed over set down: nothing read yet. */
export const handedOver = (placement: GaugePlacement): Measuring => ({
  out: { aspect: "cap", placement, slidTo: null, read: null, isExplained: false },
  shelf: [],
});

/** Of one press of the buttons that move the gauge, mm. */
const STEPS = { along: 1, across: 0.1 } as const;

/** A piece from above with a gauge on it, the gauge from the side, what it is set by, and the slip. */
export function Workplace({ gauge, heights, says, isRefused, isAsking, children, underPlan, ...plan }: WorkplaceProps) {
  const desk = useRef<HTMLDivElement>(null);
  const onPlan = useRef<HTMLDivElement>(null);
  const { out, send } = gauge;
  if (!out) return null;
  const { placement } = out;
  const moveTo = (x: number, y: number) => send({ kind: "move", place: { x, y } });
  return (
    <div ref={desk} className="drill-workplace mt-3">
      <div className="rounded-md bg-bench-2 p-3 text-bench-text">
        <PlanView
          ref={onPlan}
          heights={heights}
          gauge={gauge}
          isAsking={isAsking}
          onSlide={() => desk.current?.querySelector<HTMLElement>("[data-slide]")?.focus()}
          label="The plate from above. Arrows move the gauge 1 mm, with Shift 10, with Alt 0.1; Q and E turn it, X, J, K, comma and full stop set its feet, O goes to its moving part."
          {...plan}
        />
        {!underPlan && (
          <fieldset disabled={!isAsking} className="mt-3 grid gap-x-5 sm:grid-cols-2 disabled:opacity-60">
            <legend className="sr-only">Where it stands and how it is set</legend>
            <div>
              <Stepper
                label="Along"
                value={placement.x}
                unit=" mm"
                less={placement.x - STEPS.along}
                more={placement.x + STEPS.along}
                onChange={(x) => moveTo(x, placement.y)}
              />
              <Stepper
                label="Across"
                value={placement.y}
                unit=" mm"
                less={placement.y - STEPS.across}
                more={placement.y + STEPS.across}
                onChange={(y) => moveTo(placement.x, y)}
              />
              <p className="mt-2 hidden text-bench-dim text-xs leading-snug sm:block">
                With the focus on the plate: arrows move it 1&nbsp;mm, with Shift 10, with Alt 0.1. Q&nbsp;E turn it,
                X&nbsp;J&nbsp;K&nbsp;,&nbsp;. set its feet, O goes to the moving part, Esc back.
              </p>
            </div>
            <GaugeSettings placement={placement} send={send} />
          </fieldset>
        )}
        {underPlan && <div className="mt-3 rounded bg-sheet p-4 text-ink">{underPlan}</div>}
      </div>
      <div className="min-w-0 space-y-3">
        <section
          aria-label={GAUGES[placement.kind].name}
          data-gauge={placement.kind}
          className="rounded-md bg-bench-2 p-3 text-bench-text"
          onKeyDown={(event) => event.key === "Escape" && onPlan.current?.focus()}
        >
          <p className="mb-2 min-h-10 text-sm leading-tight">
            <b className="mr-2">{GAUGES[placement.kind].name}</b>
            <span role="status" data-gauge-says="" className={isRefused ? "text-lamp" : "text-bench-text"}>
              {says}
            </span>
          </p>
          <SideView gauge={gauge} out={out} />
        </section>
        <div className="rounded-md border border-line bg-sheet p-4">{children}</div>
      </div>
    </div>
  );
}
