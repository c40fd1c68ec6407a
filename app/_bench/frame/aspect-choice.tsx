"use client";
import type { Aspect } from "@/lib/weld";
import { ASPECT_NAMES } from "../report/call-words";

const SHORT_NAMES: Readonly<Record<Aspect, string>> = {
  cap: "Cap",
  root: "Root",
  fillet: "Into the corner",
  base: "Base plate",
  standing: "Standing plate",
};

export interface AspectChoiceProps {
  readonly aspects: readonly Aspect[];
  readonly aspect: Aspect;
  readonly onChoose: (aspect: Aspect) => void;
}

/** How the piece is turned to the eye, where there are more ways than over and back. */
export function AspectChoice({ aspects, aspect, onChoose }: AspectChoiceProps) {
  return (
    <fieldset
      className="absolute top-10 right-2 z-20 flex xl:top-2 cursor-default overflow-hidden rounded border border-bench-line bg-bench/90"
      onPointerDown={(event) => event.stopPropagation()}
    >
      <legend className="sr-only">Looked at</legend>
      {aspects.map((one) => (
        <button
          key={one}
          type="button"
          aria-pressed={one === aspect}
          title={ASPECT_NAMES[one]}
          className="h-11 px-3 text-bench-text text-sm hover:bg-bench-line aria-pressed:bg-lamp aria-pressed:text-ink"
          onClick={() => onChoose(one)}
        >
          {SHORT_NAMES[one]}
        </button>
      ))}
    </fieldset>
  );
}
