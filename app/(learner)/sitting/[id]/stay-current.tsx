"use client";

import { useRouter } from "next/navigation";
import { useEffect, useState } from "react";
import { Notice } from "@/app/_ui/notice";
import { postJson } from "./post-json";

/** Whoever is in waits for the beginning; others need not know so soon. */
const IN_MS = 3_000;
const OUT_MS = 10_000;

interface StayCurrentProps {
  readonly id: string;
  /** Whether the learner has come in, so that the tutor sees they are still there. */
  readonly isIn: boolean;
  /** The sitting as the page shows it, as JSON. */
  readonly drawn: string;
  /** Nothing more is to come. */
  readonly isOver: boolean;
}

/** Keeps the page of a sitting as it stands on the server, and tells the server that the learner is still there. */
export function StayCurrent({ id, isIn, drawn, isOver }: StayCurrentProps) {
  const router = useRouter();
  const [isLost, setIsLost] = useState(false);
  useEffect(() => {
    if (isOver) return;
    let timer: ReturnType<typeof setTimeout>;
    let isGone = false;
    const look = async () => {
      if (isIn) {
        const { answer } = await postJson(`/api/sittings/${id}/enter`);
        if (isGone) return;
        setIsLost(answer === null);
        const now = JSON.stringify(answer && typeof answer === "object" && "sitting" in answer ? answer.sitting : null);
        if (answer !== null && now !== drawn) router.refresh();
      } else if (document.visibilityState === "visible") router.refresh();
      timer = setTimeout(look, isIn ? IN_MS : OUT_MS);
    };
    const soon = () => {
      clearTimeout(timer);
      if (document.visibilityState === "visible") void look();
      else timer = setTimeout(look, isIn ? IN_MS : OUT_MS);
    };
    timer = setTimeout(look, isIn ? 0 : OUT_MS);
    document.addEventListener("visibilitychange", soon);
    return () => {
      isGone = true;
      clearTimeout(timer);
      document.removeEventListener("visibilitychange", soon);
    };
  }, [id, isIn, drawn, isOver, router]);
  // as it was drawn, the page may be behind: coming back from the bench shows it anew
  useEffect(() => {
    const back = (event: PageTransitionEvent) => event.persisted && router.refresh();
    window.addEventListener("pageshow", back);
    return () => window.removeEventListener("pageshow", back);
  }, [router]);
  if (!isLost) return null;
  return (
    <div className="fixed inset-x-4 bottom-4 mx-auto max-w-2xl shadow-lg">
      <Notice>The workshop's server does not answer just now. Stay here: this page asks again by itself.</Notice>
    </div>
  );
}
