"use client";
import { type Ref, useEffect, useImperativeHandle, useState } from "react";
import { onFace, type Place, seenPlace, toPlace, wholePlate } from "@/lib/bench";
import { ASPECTS, faceOf, type SurfaceFace } from "@/lib/weld";
import { DatumRule } from "../overlay/datum-rule";
import { type Highlight, Outlines } from "../overlay/outlines";
import { Overlay } from "../overlay/overlay";
import { ASPECT_NAMES } from "../report/call-words";
import type { FaceHeights } from "../viewer/protocol";
import type { FaceSource } from "../viewer/specimen-link";
import { SpecimenStage } from "../viewer/specimen-stage";
import { useHeights } from "../viewer/use-heights";
import { useLooking } from "../viewer/use-looking";
import { useSpecimen } from "../viewer/use-specimen";
import { ViewButtons } from "./view-buttons";

/** What the owner of a specimen view can ask of it. */
export interface SpecimenViewHandle {
  /** Goes to a place, turning the piece where it is not seen as it lies. */
  focus(x: number, y: number, face: SurfaceFace): void;
}

export interface SpecimenViewProps {
  readonly sources: readonly FaceSource[];
  readonly highlights: readonly Highlight[];
  /** The outline that is drawn stronger. */
  readonly chosenId?: string | null;
  /** Heights of the face that is looked at, for a profile; null while there are none. */
  readonly onHeights?: (face: SurfaceFace, heights: FaceHeights | null) => void;
  /** A tap on the plate: where on which face. */
  readonly onTap?: (place: Place, face: SurfaceFace) => void;
  readonly handle?: Ref<SpecimenViewHandle>;
}

/** Scale at which a place is shown, px per mm. */
const FOCUS_SCALE = 9;

/** The plate under the same torch as at the bench, with outlines drawn on it; nothing can be written here. */
export function SpecimenViewDesk({ sources, highlights, chosenId, onHeights, onTap, handle }: SpecimenViewProps) {
  const { link, specimen } = useSpecimen(sources);
  const heightsOf = useHeights(specimen);
  const looking = useLooking(sources[0].face, heightsOf);
  const { aspect, view } = looking;
  const face = faceOf(aspect);
  const aspects = ASPECTS.filter((one) => sources.some((source) => source.face === faceOf(one)));
  const [lensAt, setLensAt] = useState<Place | null>(null);
  const [areOutlinesShown, setAreOutlinesShown] = useState(true);
  const state = specimen.aspects[face];
  const heights = state?.kind === "ready" ? state.heights : null;
  useEffect(() => onHeights?.(face, heights), [onHeights, face, heights]);

  useImperativeHandle(handle, () => ({
    focus: (x, y, target) => {
      const scale = Math.max(view?.scale ?? 0, FOCUS_SCALE);
      const seen = target === face ? seenPlace(aspect, { x, y }, heightsOf(face)) : null;
      if (seen) looking.goTo(aspect, seen, scale);
      else looking.goTo(target, { x, y }, scale);
    },
  }));

  return (
    <SpecimenStage
      link={link}
      specimen={specimen}
      looking={looking}
      lensAt={lensAt}
      cursorStyle="grab"
      label={`${ASPECT_NAMES[aspect]}, under the torch`}
      handlers={{
        onTap: (at) => view && onTap?.(onFace(aspect, toPlace(view, at), heightsOf(aspect)), face),
        onHover: (at) => lensAt && view && at && setLensAt(toPlace(view, at)),
      }}
      overlay={(shown) => (
        <Overlay view={shown}>
          <DatumRule view={shown} />
          {areOutlinesShown && (
            <Outlines view={shown} highlights={highlights} chosenId={chosenId ?? null} heightAt={heightsOf(face)} />
          )}
        </Overlay>
      )}
    >
      <ViewButtons
        aspect={aspect}
        isLensHeld={lensAt !== null}
        areOutlinesShown={areOutlinesShown}
        onTurn={() => {
          setLensAt(null);
          looking.turnTo(aspects[(aspects.indexOf(aspect) + 1) % aspects.length]);
        }}
        onWhole={() => looking.changeView(wholePlate)}
        onLens={() => setLensAt(lensAt ? null : { x: view?.x ?? 150, y: 0 })}
        onOutlines={() => setAreOutlinesShown(!areOutlinesShown)}
        changeView={looking.changeView}
      />
    </SpecimenStage>
  );
}
