"use client";
import { type Ref, useEffect, useImperativeHandle, useState } from "react";
import { type Place, toPlace, wholePlate } from "@/lib/bench";
import type { Face } from "@/lib/weld";
import { DatumRule } from "../overlay/datum-rule";
import { type Highlight, Outlines } from "../overlay/outlines";
import { Overlay } from "../overlay/overlay";
import { FACE_NAMES } from "../report/call-words";
import type { FaceHeights } from "../viewer/protocol";
import type { FaceSource } from "../viewer/specimen-link";
import { SpecimenStage } from "../viewer/specimen-stage";
import { useLooking } from "../viewer/use-looking";
import { useSpecimen } from "../viewer/use-specimen";
import { ViewButtons } from "./view-buttons";

/** What the owner of a specimen view can ask of it. */
export interface SpecimenViewHandle {
  /** Goes to a place, turning the plate where it lies on the other face. */
  focus(x: number, y: number, face: Face): void;
}

export interface SpecimenViewProps {
  readonly sources: readonly FaceSource[];
  readonly highlights: readonly Highlight[];
  /** The outline that is drawn stronger. */
  readonly chosenId?: string | null;
  /** Heights of the face in sight, for a profile; null while there are none. */
  readonly onHeights?: (face: Face, heights: FaceHeights | null) => void;
  /** A tap on the plate: where, on the face in sight. */
  readonly onTap?: (place: Place, face: Face) => void;
  readonly handle?: Ref<SpecimenViewHandle>;
}

/** Scale at which a place is shown, px per mm. */
const FOCUS_SCALE = 9;

/** The plate under the same torch as at the bench, with outlines drawn on it; nothing can be written here. */
export function SpecimenViewDesk({ sources, highlights, chosenId, onHeights, onTap, handle }: SpecimenViewProps) {
  const { link, specimen } = useSpecimen(sources);
  const looking = useLooking(sources[0].face);
  const { face, view } = looking;
  const [lensAt, setLensAt] = useState<Place | null>(null);
  const [areOutlinesShown, setAreOutlinesShown] = useState(true);
  const state = specimen.faces[face];
  const heights = state?.kind === "ready" ? state.heights : null;
  useEffect(() => onHeights?.(face, heights), [onHeights, face, heights]);

  useImperativeHandle(handle, () => ({
    focus: (x, y, target) => looking.goTo(target, { x, y }, Math.max(view?.scale ?? 0, FOCUS_SCALE)),
  }));

  return (
    <SpecimenStage
      link={link}
      specimen={specimen}
      looking={looking}
      lensAt={lensAt}
      cursorStyle="grab"
      label={`${FACE_NAMES[face]} of the plate under the torch`}
      handlers={{
        onTap: (at) => view && onTap?.(toPlace(view, face, at), face),
        onHover: (at) => lensAt && view && at && setLensAt(toPlace(view, face, at)),
      }}
      overlay={(shown) => (
        <Overlay view={shown}>
          <DatumRule view={shown} face={face} />
          {areOutlinesShown && (
            <Outlines view={shown} face={face} highlights={highlights} chosenId={chosenId ?? null} />
          )}
        </Overlay>
      )}
    >
      <ViewButtons
        face={face}
        isLensHeld={lensAt !== null}
        areOutlinesShown={areOutlinesShown}
        onTurn={looking.turnPlate}
        onWhole={() => looking.changeView(({ width, height }) => wholePlate(width, height))}
        onLens={() => setLensAt(lensAt ? null : { x: view?.x ?? 150, y: 0 })}
        onOutlines={() => setAreOutlinesShown(!areOutlinesShown)}
        changeView={looking.changeView}
      />
    </SpecimenStage>
  );
}
