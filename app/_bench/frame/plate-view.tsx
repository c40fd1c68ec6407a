"use client";
import type { KeyboardEvent, Ref } from "react";
import { describePlace, heightOfTorch, isBehindPlate, sideOfTorch, type Torch } from "@/lib/bench";
import { type Aspect, faceOf, sideLetter } from "@/lib/weld";
import { ASPECT_NAMES } from "../report/call-words";
import { SpecimenStage } from "../viewer/specimen-stage";
import { AspectChoice } from "./aspect-choice";
import { PlateOverlay } from "./plate-overlay";
import { Spoken } from "./spoken";
import type { Bench } from "./use-bench";

const CURSORS = { hand: "grab", mark: "crosshair", gauge: "cell" } as const;

/** Where the light comes from; over the other plate's edge its angle is no longer the hand's to choose. */
function lightWords(torch: Torch, aspect: Aspect): string {
  if (isBehindPlate(torch, aspect)) return "over the edge of the other plate";
  return `${sideOfTorch(torch)}, ${Math.round(torch.elevation)}°`;
}

export interface PlateViewProps {
  readonly bench: Bench;
  readonly ref: Ref<HTMLDivElement>;
  readonly onKeyDown: (event: KeyboardEvent) => void;
}

/** The plate on the bench with everything that lies on it. */
export function PlateView({ bench, ref, onKeyDown }: PlateViewProps) {
  const { looking, report, gauge, cursor, hover, drawing } = bench;
  const { aspect, torch } = looking;
  const read = hover ?? cursor;
  const onPiece = bench.onPiece(read);
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
      label={`${ASPECT_NAMES[aspect]}. Arrow keys move the cursor, question mark tells all keys.`}
      overlay={(view) => (
        <PlateOverlay
          view={view}
          calls={report.writing.report.calls}
          openId={report.writing.openId}
          placeOf={bench.placeOf}
          gauge={gauge.out?.placement ?? null}
          drawing={drawing}
          cursor={bench.isGaugeInHand ? null : cursor}
        />
      )}
    >
      <p className="pointer-events-none absolute left-2 top-2 z-10 rounded bg-bench/85 px-2 py-1 text-bench-text text-xs tabular-nums">
        <b>{ASPECT_NAMES[aspect]}</b>
        <span className="ml-3">
          {onPiece.x.toFixed(1)} mm · {Math.abs(onPiece.y).toFixed(1)} {sideLetter(faceOf(aspect), onPiece.y)}
        </span>
        {aspect !== faceOf(aspect) && <span className="ml-3">{Math.abs(read.y).toFixed(1)} along the plate</span>}
        <span className="ml-3 text-bench-dim">light {lightWords(torch, aspect)}</span>
      </p>
      {bench.aspects.length > 2 && <AspectChoice aspects={bench.aspects} aspect={aspect} onChoose={bench.turnTo} />}
      <Spoken
        text={`${ASPECT_NAMES[aspect]}: ${describePlace(aspect, bench.onPiece(cursor))}${bench.begun ? `, begun at ${bench.begun.x.toFixed(1)}` : ""}. Light from the ${sideOfTorch(torch)}, ${isBehindPlate(torch, aspect) ? "over the edge of the other plate" : heightOfTorch(torch)}.`}
      />
    </SpecimenStage>
  );
}
