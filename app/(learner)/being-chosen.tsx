"use client";

import { useRouter } from "next/navigation";
import { useEffect, useState } from "react";

const EVERY_MS = 3_000;
/** Whoever makes pieces for others may be busy: after so many looks it is looked for more slowly. */
const QUICK_LOOKS = 20;
const LATER_EVERY_MS = 15_000;

/** Says that a piece is being chosen, and shows the page anew until one waits; while nobody sees the page it is not looked for. */
export function BeingChosen() {
  const router = useRouter();
  const [looks, setLooks] = useState(0);
  const isQuick = looks < QUICK_LOOKS;
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const look = () => {
      router.refresh();
      setLooks(looks + 1);
    };
    const wait = () => {
      clearTimeout(timer);
      if (document.visibilityState === "visible") timer = setTimeout(look, isQuick ? EVERY_MS : LATER_EVERY_MS);
    };
    const onChange = () => (document.visibilityState === "visible" ? look() : wait());
    wait();
    document.addEventListener("visibilitychange", onChange);
    return () => {
      clearTimeout(timer);
      document.removeEventListener("visibilitychange", onChange);
    };
  }, [looks, isQuick, router]);
  return (
    <p>
      {isQuick
        ? "It is being chosen just now, which takes some seconds. Begin before that, and you get a plate as chance has it."
        : "It takes longer than usual. Begin before it is chosen, and you get a plate as chance has it."}
    </p>
  );
}
