"use client";
import { useEffect, useRef, useState } from "react";
import type { AskedTask } from "@/lib/eye";
import { openSpecimen, type SpecimenLink } from "../_bench/viewer/specimen-link";

/** Where the metal of a window comes from. */
const urlOf = (task: AskedTask, window: number): string => `/api/eye/tasks/${task.id}/windows/${window}`;

/**
 * The windows of some tasks, each with the workers that unpack and paint it; those of the task that comes next are made ready
 * while the one at hand is looked at. A link is null in the first pass.
 */
export function useWindowLinks(tasks: readonly AskedTask[]): (task: AskedTask, window: number) => SpecimenLink | null {
  const open = useRef(new Map<string, SpecimenLink>());
  const [links, setLinks] = useState<ReadonlyMap<string, SpecimenLink>>(new Map());
  const sources = tasks.flatMap((task) =>
    task.windows.map(({ face }, n) => ({ face, url: urlOf(task, n), isWindow: true as const })),
  );
  const key = sources.map(({ url }) => url).join("\n");
  // biome-ignore lint/correctness/useExhaustiveDependencies: the addresses say which windows these are
  useEffect(() => {
    const wanted = new Set(sources.map(({ url }) => url));
    for (const [url, link] of open.current) {
      if (wanted.has(url)) continue;
      link.close();
      open.current.delete(url);
    }
    for (const source of sources) {
      if (!open.current.has(source.url)) open.current.set(source.url, openSpecimen([source]));
    }
    setLinks(new Map(open.current));
  }, [key]);
  useEffect(() => {
    const all = open.current;
    return () => {
      for (const link of all.values()) link.close();
      all.clear();
    };
  }, []);
  return (task, window) => links.get(urlOf(task, window)) ?? null;
}
