"use client";
import { type KeyboardEvent, type Ref, useState } from "react";
import { describePlace, heightOfTorch, type Place, sideOfTorch, toScreen } from "@/lib/bench";
import { type GaugeCorner, GaugeTray } from "../gauge/gauge-tray";
import { FACE_NAMES } from "../report/call-words";
import { SpecimenStage } from "../viewer/specimen-stage";
import type { Looking } from "../viewer/use-looking";
import { PlateOverlay } from "./plate-overlay";
import { Spoken } from "./spoken";
import type { Bench } from "./use-bench";

const CURSORS = { hand: "grab", mark: "crosshair", rule: "crosshair", gauge: "cell" } as const;

export interface PlateViewProps {
  readonly bench: Bench;
  readonly ref: Ref<HTMLDivElement>;
  readonly onKeyDown: (event: KeyboardEvent) => void;
}

/** The plate on the bench with everything that lies on it. */
export function PlateView({ bench, ref, onKeyDown }: PlateViewProps) {
  const { looking, report, gauge, cursor, hover, drawing } = bench;
  const { face, torch } = looking;
  const read = hover ?? cursor;
  const [isMoved, setIsMoved] = useState(false);
  const corner = cornerAwayFrom(looking, gauge.placement, isMoved);
  return (
    <SpecimenStage
      ref={ref}
      link={bench.link}
      specimen={bench.specimen}
      looking={looking}
      handlers={bench.handlers}
      lensAt={bench.lensAt}
      onKeyDown={onKeyDown}
      cursorStyle={bench.lensAt ? "none" : CURSORS[bench.tool]}
      label={`${FACE_NAMES[face]} of the plate. Arrow keys move the cursor, question mark tells all keys.`}
      overlay={(view) => (
        <PlateOverlay
          view={view}
          face={face}
          calls={report.writing.report.calls}
          openId={report.writing.openId}
          gauge={gauge.placement}
          rule={bench.rule}
          drawing={drawing}
          cursor={cursor}
        />
      )}
    >
      <p className="pointer-events-none absolute left-2 top-2 z-10 rounded bg-bench/85 px-2 py-1 text-bench-text text-xs tabular-nums">
        <b>{FACE_NAMES[face]}</b>
        <span className="ml-3">
          {read.x.toFixed(1)} mm · {Math.abs(read.y).toFixed(1)} {read.y >= 0 ? "A" : "B"}
        </span>
        <span className="ml-3 text-bench-dim">
          light {sideOfTorch(torch)}, {Math.round(torch.elevation)}°
        </span>
      </p>
      {gauge.placement && (
        <GaugeTray
          placement={gauge.placement}
          reading={gauge.reading}
          heights={bench.heights}
          corner={corner}
          onOtherSide={() => setIsMoved(!isMoved)}
          onChange={gauge.setPlacement}
          onPutAway={gauge.putAway}
        />
      )}
      <Spoken
        text={`${FACE_NAMES[face]}: ${describePlace(cursor)}${bench.begun ? `, begun at ${bench.begun.x.toFixed(1)}` : ""}. Light from the ${sideOfTorch(torch)}, ${heightOfTorch(torch)}.`}
      />
    </SpecimenStage>
  );
}

/** The panel lies aside of the gauge's tip, below the weld where the tip is not there; `isMoved` puts it on the other side. */
function cornerAwayFrom({ view, face }: Looking, tip: Place | null, isMoved: boolean): GaugeCorner {
  if (!view || !tip) return "bottom-left";
  const { left, top } = toScreen(view, face, tip);
  const isRight = left < view.width / 2 !== isMoved;
  return `${top > view.height * 0.6 ? "top" : "bottom"}-${isRight ? "right" : "left"}`;
}
