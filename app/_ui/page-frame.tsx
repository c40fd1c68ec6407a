import type { ReactNode } from "react";

interface PageFrameProps {
  readonly title: ReactNode;
  /** One sentence under the title. */
  readonly lead?: ReactNode;
  readonly children: ReactNode;
  readonly isNarrow?: boolean;
  /** As wide as the screen, for a page with a plate on it. */
  readonly isWide?: boolean;
}

/** The sheet of paper that a page is written on. */
export function PageFrame({ title, lead, children, isNarrow = false, isWide = false }: PageFrameProps) {
  return (
    <main
      id="main"
      tabIndex={-1}
      className={`mx-auto px-6 py-8 outline-none ${isNarrow ? "max-w-2xl" : isWide ? "max-w-[100rem]" : "max-w-6xl"}`}
    >
      <h1 className="text-2xl font-semibold tracking-tight wrap-anywhere">{title}</h1>
      {lead && <p className="mt-2 max-w-3xl text-lg text-ink-2 wrap-anywhere">{lead}</p>}
      {children}
    </main>
  );
}
