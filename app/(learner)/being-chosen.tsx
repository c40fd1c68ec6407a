"use client";

import { useRouter } from "next/navigation";
import { useEffect, useState } from "react";

const EVERY_MS = 3_000;
/** Whoever makes pieces for others may be busy; then it is there the next time. */
const MOST_LOOKS = 20;

/** Says that a piece is being chosen, and shows the page anew until one waits. */
export function BeingChosen() {
  const router = useRouter();
  const [looks, setLooks] = useState(0);
  useEffect(() => {
    if (looks === MOST_LOOKS) return;
    const timer = setTimeout(() => {
      if (document.visibilityState === "visible") router.refresh();
      setLooks(looks + 1);
    }, EVERY_MS);
    return () => clearTimeout(timer);
  }, [looks, router]);
  return (
    <p>
      {looks < MOST_LOOKS
        ? "It is being chosen just now, which takes some seconds. Begin before that, and you get a plate as chance has it."
        : "It could not be chosen yet. Begin, and you get a plate as chance has it; the next one is chosen by what you find."}
    </p>
  );
}
