"use client";

import { useSyncExternalStore } from "react";

const never = () => () => undefined;

/** A point in time in the reader's own language and time zone; until the browser takes over, in UTC. */
export function LocalTime({ at, withTime = true }: { readonly at: Date; readonly withTime?: boolean }) {
  const isBrowser = useSyncExternalStore(
    never,
    () => true,
    () => false,
  );
  const format = new Intl.DateTimeFormat(isBrowser ? undefined : "en-GB", {
    day: "numeric",
    month: "short",
    year: "numeric",
    ...(withTime && { hour: "2-digit", minute: "2-digit" }),
    ...(!isBrowser && { timeZone: "UTC" }),
  });
  return (
    <time dateTime={at.toISOString()} className="whitespace-nowrap">
      {format.format(at)}
    </time>
  );
}
