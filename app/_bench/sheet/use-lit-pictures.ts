"use client";
import { useEffect, useState } from "react";
import { FIRST_TORCH, lampPosition } from "@/lib/bench";
import { type Aspect, upOnScreen } from "@/lib/weld";
import { type FaceSource, type Frame, openSpecimen, type SpecimenLink } from "../viewer/specimen-link";

/** A part of a piece to be painted once, mm as it is seen from the aspect. */
export interface WantedPicture {
  readonly id: string;
  readonly aspect: Aspect;
  readonly from: number;
  readonly to: number;
  readonly low: number;
  readonly high: number;
  /** Pixels of the picture for each mm. */
  readonly perMm: number;
}

export interface LitPictures {
  /** Addresses of the finished pictures by their id; more come as they are painted. */
  readonly pictures: Readonly<Record<string, string>>;
  /** Why there are no more to come; null while all is well. */
  readonly problem: string | null;
}

const JPEG_QUALITY = 0.92;

/**
 * Still pictures of a piece under the torch as it is held at first, by the same painter as at the bench; for prints. Neither
 * `sources` nor `wanted` may change while it lives.
 */
export function useLitPictures(sources: readonly FaceSource[], wanted: readonly WantedPicture[]): LitPictures {
  const [pictures, setPictures] = useState<LitPictures["pictures"]>({});
  const [problem, setProblem] = useState<string | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a print is painted once
  useEffect(() => {
    const link = openSpecimen(sources);
    const addresses: string[] = [];
    let isOver = false;
    const paintAll = async () => {
      for (const [n, picture] of wanted.entries()) {
        await aspectReady(link, picture.aspect);
        const blob = await paint(link, picture, n + 1);
        if (isOver) return;
        const address = URL.createObjectURL(blob);
        addresses.push(address);
        setPictures((known) => ({ ...known, [picture.id]: address }));
      }
      link.close();
    };
    paintAll().catch((error: unknown) => {
      if (!isOver) setProblem(error instanceof Error ? error.message : String(error));
    });
    return () => {
      isOver = true;
      link.close();
      for (const address of addresses) URL.revokeObjectURL(address);
    };
  }, []);
  return { pictures, problem };
}

/** Resolves when an aspect can be painted; rejects where it, or the painter, cannot be had. */
function aspectReady(link: SpecimenLink, aspect: Aspect): Promise<void> {
  return new Promise((resolve, reject) => {
    let leave = () => {};
    const look = () => {
      const { aspects, brokenBecause } = link.state();
      const state = aspects[aspect];
      if (brokenBecause !== null) reject(new Error(brokenBecause));
      else if (state?.kind === "failed") reject(new Error(state.reason));
      else if (state?.kind === "ready") resolve();
      else return;
      leave();
    };
    leave = link.subscribe(look);
    look();
  });
}

async function paint(link: SpecimenLink, picture: WantedPicture, number: number): Promise<Blob> {
  const { aspect, from, to, low, high, perMm } = picture;
  const view = {
    aspect,
    width: (to - from) * perMm,
    height: (high - low) * perMm,
    x: (from + to) / 2,
    up: ((low + high) / 2) * upOnScreen(aspect),
    scale: perMm,
  };
  const lamp = lampPosition(FIRST_TORCH, view);
  const bitmap = await new Promise<ImageBitmap>((resolve) => {
    const leave = link.onFrame("picture", (frame: Frame) => {
      if (frame.request.number !== number || !frame.isFinal) return frame.bitmap.close();
      leave();
      resolve(frame.bitmap);
    });
    link.paint({ target: "picture", view, pixelRatio: 1, lamp, isMoving: false, number });
  });
  const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
  canvas.getContext("bitmaprenderer")!.transferFromImageBitmap(bitmap);
  return canvas.convertToBlob({ type: "image/jpeg", quality: JPEG_QUALITY });
}
