"use client";
import dynamic from "next/dynamic";
import type { SpecimenViewProps } from "./sheet/specimen-view-desk";

const SpecimenViewDesk = dynamic(() => import("./sheet/specimen-view-desk").then((module) => module.SpecimenViewDesk), {
  ssr: false,
  loading: () => (
    <p className="grid size-full place-items-center bg-bench text-bench-dim" role="status">
      Laying the plate on the bench...
    </p>
  ),
});

/** The plate under the torch with outlines on it, in the browser only. It fills the box it is put in. */
export function SpecimenView(props: SpecimenViewProps) {
  return <SpecimenViewDesk {...props} />;
}
