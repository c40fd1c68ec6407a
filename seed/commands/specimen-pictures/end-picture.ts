import type { EndView, SectionPoint } from "@/lib/weld";
import { sheetPng } from "./png";

const PER_MM = 12;
const SHOWN = { left: -34, right: 44, top: 50, bottom: -18 };

/** One end of a joint as it is seen along the weld: sawn plates, the weld's end before them, the gap as far as it is open. */
export function endPicture({ base, standing, weld }: EndView): Promise<Buffer> {
  const width = (SHOWN.right - SHOWN.left) * PER_MM;
  const height = (SHOWN.top - SHOWN.bottom) * PER_MM;
  const outline = (points: readonly SectionPoint[]) =>
    points
      .map(({ along, up }) => `${((along - SHOWN.left) * PER_MM).toFixed(1)},${((SHOWN.top - up) * PER_MM).toFixed(1)}`)
      .join(" ");
  const drawing = `<defs>
<linearGradient id="weld" x1="0" y1="0" x2="1" y2="1"><stop offset="0" stop-color="#8e8a83"/><stop offset="1" stop-color="#5f5b55"/></linearGradient>
<linearGradient id="plate" x1="0" y1="0" x2="0" y2="1"><stop offset="0" stop-color="#7d7c79"/><stop offset="1" stop-color="#696865"/></linearGradient>
<pattern id="sawn" width="7" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(4)"><path d="M0 1H7M0 3.4H7" stroke="#94928e" stroke-width="0.6" opacity="0.5"/></pattern></defs>
<polygon points="${outline(base)}" fill="url(#plate)"/><polygon points="${outline(base)}" fill="url(#sawn)" stroke="#2a2827" stroke-width="1.2"/>
<polygon points="${outline(standing)}" fill="url(#plate)"/><polygon points="${outline(standing)}" fill="url(#sawn)" stroke="#2a2827" stroke-width="1.2"/>
<polygon points="${outline(weld)}" fill="url(#weld)" stroke="#2d2a27" stroke-width="1.4" stroke-linejoin="round"/>`;
  return sheetPng(width, height, "#191b1d", [], drawing);
}
