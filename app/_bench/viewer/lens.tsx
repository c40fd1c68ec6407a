"use client";
import { LENS_GLASS, type Place, toScreen, underLens, type Viewport } from "@/lib/bench";
import { Picture } from "./picture";
import type { SpecimenLink } from "./specimen-link";

const RIM = 3;
const LENS_SIZE = LENS_GLASS + 2 * RIM;

export interface LensProps {
  readonly link: SpecimenLink;
  readonly view: Viewport;
  readonly lamp: readonly [number, number, number];
  readonly place: Place;
}

/** A magnifier held over a place: the same light, a few times closer. Where it would show nothing new it says so. */
export function Lens({ link, view, lamp, place }: LensProps) {
  const { left, top } = toScreen(view, place);
  const seen = underLens(view, place);
  if (seen === null) {
    return (
      <p
        role="status"
        className="pointer-events-none absolute bottom-11 left-1/2 z-10 w-max max-w-[80%] -translate-x-1/2 rounded bg-bench/85 px-2 py-1 text-lamp text-xs"
      >
        The plate is closer than the lens shows it. Go further away to use the lens.
      </p>
    );
  }
  return (
    <div
      data-lens=""
      className="pointer-events-none absolute left-0 top-0 z-10 overflow-hidden rounded-full border-[#0c0e0f] bg-bench shadow-[0_0_0_2px_#d8d2c2,0_10px_26px_#000c]"
      style={{
        width: LENS_SIZE,
        borderWidth: RIM,
        height: LENS_SIZE,
        transform: `translate(${left - LENS_SIZE / 2}px, ${top - LENS_SIZE / 2}px)`,
      }}
    >
      <Picture link={link} target="lens" view={seen} lamp={lamp} />
      <svg viewBox="-50 -50 100 100" className="absolute inset-0 size-full" aria-hidden="true">
        <path d="M-9 0h6M3 0h6M0 -9v6M0 3v6" stroke="#000" strokeWidth="2" opacity="0.7" />
        <path d="M-9 0h6M3 0h6M0 -9v6M0 3v6" stroke="#fff" strokeWidth="0.8" />
      </svg>
    </div>
  );
}
