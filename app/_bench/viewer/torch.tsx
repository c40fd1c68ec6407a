"use client";
import { type PointerEvent, useRef } from "react";
import {
  carryTorch,
  heightOfTorch,
  sideOfTorch,
  stepTorch,
  type Torch,
  torchOnScreen,
  turnTorch,
  type Viewport,
} from "@/lib/bench";

export interface TorchHandleProps {
  readonly torch: Torch;
  readonly view: Viewport;
  readonly onChange: (torch: Torch) => void;
}

/** The torch as it lies on the bench: dragged round the plate, out to the edge for raking light, inward to lift it. */
export function TorchHandle({ torch, view, onChange }: TorchHandleProps) {
  const grip = useRef<{ left: number; top: number } | null>(null);
  const { left, top } = torchOnScreen(torch, view);
  const name = `Torch: light from the ${sideOfTorch(torch)}, ${heightOfTorch(torch)}, ${Math.round(torch.elevation)} degrees over the plate`;

  const grab = (event: PointerEvent<HTMLButtonElement>) => {
    if (event.button !== 0) return;
    event.stopPropagation();
    event.currentTarget.setPointerCapture(event.pointerId);
    grip.current = { left: event.clientX - left, top: event.clientY - top };
  };
  const carry = (event: PointerEvent<HTMLButtonElement>) => {
    if (!grip.current) return;
    event.stopPropagation();
    onChange(carryTorch(view, { left: event.clientX - grip.current.left, top: event.clientY - grip.current.top }));
  };
  const release = () => {
    grip.current = null;
  };

  return (
    <button
      type="button"
      aria-label={name}
      title="Torch: drag it round the plate. Further out is lower. Keys: arrows."
      className="absolute left-0 top-0 z-20 grid size-16 -translate-x-1/2 -translate-y-1/2 cursor-grab touch-none place-items-center rounded-full active:cursor-grabbing"
      style={{ transform: `translate(${left - 32}px, ${top - 32}px)` }}
      onPointerDown={grab}
      onPointerMove={carry}
      onPointerUp={release}
      onPointerCancel={release}
      onKeyDown={(event) => {
        const next = keyedTorch(torch, event.key);
        if (!next) return;
        event.preventDefault();
        event.stopPropagation();
        onChange(next);
      }}
    >
      <TorchDrawing torch={torch} />
    </button>
  );
}

/** The torch after an arrow key: left and right carry it round, up and down lift and lower it; null for any other key. */
export function keyedTorch(torch: Torch, key: string): Torch | null {
  switch (key) {
    case "ArrowLeft":
      return turnTorch(torch, 1);
    case "ArrowRight":
      return turnTorch(torch, -1);
    case "ArrowUp":
      return stepTorch(torch, 1);
    case "ArrowDown":
      return stepTorch(torch, -1);
    default:
      return null;
  }
}

/** Seen from above, its head towards the plate; the lifted torch is drawn larger, as things nearer to the eye are. */
function TorchDrawing({ torch }: { torch: Torch }) {
  const size = 0.86 + torch.elevation / 260;
  return (
    <svg
      viewBox="-32 -32 64 64"
      className="pointer-events-none size-16 overflow-visible drop-shadow-[0_4px_5px_#000b]"
      aria-hidden="true"
      style={{ transform: `rotate(${180 - torch.azimuth}deg) scale(${size})` }}
    >
      <defs>
        <radialGradient id="torch-glow" cx="0.3" cy="0.5" r="0.7">
          <stop offset="0" stopColor="#fff6d8" />
          <stop offset="0.5" stopColor="#f2c14e" />
          <stop offset="1" stopColor="#f2c14e" stopOpacity="0" />
        </radialGradient>
        <linearGradient id="torch-body" x1="0" y1="0" x2="0" y2="1">
          <stop offset="0" stopColor="#20262a" />
          <stop offset="0.35" stopColor="#6b757c" />
          <stop offset="1" stopColor="#15191c" />
        </linearGradient>
      </defs>
      <path d="M14 -11 L30 -22 L30 22 L14 11 Z" fill="url(#torch-glow)" opacity="0.75" />
      <rect x="-28" y="-7" width="31" height="14" rx="5" fill="url(#torch-body)" stroke="#f6f3ec" strokeWidth="1.2" />
      <path d="M3 -7 L14 -12 L14 12 L3 7 Z" fill="url(#torch-body)" stroke="#f6f3ec" strokeWidth="1.2" />
      <rect x="13" y="-12" width="4" height="24" rx="2" fill="#fff3c4" stroke="#5a4512" strokeWidth="0.8" />
      <path d="M-22 -7v14M-18 -7v14M-14 -7v14" stroke="#0008" strokeWidth="1.4" />
      <circle cx="-5" cy="0" r="2.4" fill="#f2c14e" />
    </svg>
  );
}
