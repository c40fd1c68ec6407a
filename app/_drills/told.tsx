"use client";
import { type ReactNode, useEffect, useRef } from "react";
import { Button } from "@/app/_ui/button";

export interface ToldProps {
  readonly isRight: boolean;
  readonly isLast: boolean;
  readonly children: ReactNode;
  readonly onGoOn: () => void;
  /** Besides going on. */
  readonly more?: ReactNode;
}

/** Right or not, by shape and word besides colour; why; and on with Enter. */
export function Told({ isRight, isLast, children, onGoOn, more }: ToldProps) {
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    box.current?.querySelector("button")?.focus({ preventScroll: true });
    box.current?.scrollIntoView({ block: "nearest" });
  }, []);
  return (
    <div ref={box} data-told={isRight ? "right" : "wrong"}>
      <div role="status">
        <p className={`flex items-center gap-2 text-lg font-semibold ${isRight ? "text-found" : "text-missed"}`}>
          <svg viewBox="0 0 12 12" className="size-4 shrink-0" aria-hidden="true">
            {isRight ? (
              <circle cx="6" cy="6" r="5" fill="currentColor" />
            ) : (
              <path d="M6 1 11 6 6 11 1 6Z" fill="none" stroke="currentColor" strokeWidth="2" />
            )}
          </svg>
          {isRight ? "Right" : "Not right"}
        </p>
        <div className="mt-1 space-y-2 leading-snug">{children}</div>
      </div>
      <div className="mt-3 flex flex-wrap gap-2">
        <Button onClick={onGoOn}>{isLast ? "See the round" : "Go on"}</Button>
        {more}
      </div>
    </div>
  );
}
