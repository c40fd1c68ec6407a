import type { ReactNode } from "react";

/** Something that happened and that a person has to know; read out as soon as it appears. */
export function Notice({ children, isGood = false }: { readonly children: ReactNode; readonly isGood?: boolean }) {
  return (
    <p
      role={isGood ? "status" : "alert"}
      className={`rounded border-l-4 bg-paper-2 px-4 py-3 text-sm wrap-anywhere ${isGood ? "border-found" : "border-missed"}`}
    >
      {children}
    </p>
  );
}
