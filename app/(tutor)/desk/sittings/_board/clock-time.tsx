"use client";

import { useSyncExternalStore } from "react";

const never = () => () => undefined;

/** A time of day in the reader's own language and time zone; until the browser takes over, in UTC. */
export function ClockTime({ at, withSeconds = false }: { readonly at: Date; readonly withSeconds?: boolean }) {
  const isBrowser = useSyncExternalStore(
    never,
    () => true,
    () => false,
  );
  const format = new Intl.DateTimeFormat(isBrowser ? undefined : "en-GB", {
    hour: "2-digit",
    minute: "2-digit",
    ...(withSeconds && { second: "2-digit" }),
    ...(!isBrowser && { timeZone: "UTC" }),
  });
  return <time dateTime={at.toISOString()}>{format.format(at)}</time>;
}
