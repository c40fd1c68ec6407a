"use client";
import { useEffect, useState, useSyncExternalStore } from "react";
import { type FaceSource, openSpecimen, type SpecimenLink, type SpecimenState } from "./specimen-link";

const NOTHING_YET: SpecimenState = { aspects: {}, means: null, brokenBecause: null };
const never = () => () => {};

/** Opens the specimen for as long as the component lives. The link is null in the very first pass. */
export function useSpecimen(sources: readonly FaceSource[]): { link: SpecimenLink | null; specimen: SpecimenState } {
  const [link, setLink] = useState<SpecimenLink | null>(null);
  const key = sources.map(({ face, url }) => `${face} ${url}`).join("\n");
  useEffect(() => {
    const opened = openSpecimen(
      key.split("\n").map((line) => {
        const [face, url] = line.split(" ");
        return { face: face as FaceSource["face"], url };
      }),
    );
    setLink(opened);
    return () => {
      opened.close();
      setLink(null);
    };
  }, [key]);
  const specimen = useSyncExternalStore(
    link?.subscribe ?? never,
    link?.state ?? (() => NOTHING_YET),
    () => NOTHING_YET,
  );
  return { link, specimen };
}
