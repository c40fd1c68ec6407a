import type { ReactNode } from "react";

interface SheetProps {
  readonly title: string;
  readonly children: ReactNode;
  readonly className?: string;
}

/** One titled part of a page. */
export function Sheet({ title, children, className = "" }: SheetProps) {
  const id = `sheet-${title.toLowerCase().replace(/[^a-z0-9]+/g, "-")}`;
  return (
    <section aria-labelledby={id} className={`min-w-0 rounded-md border border-line bg-sheet p-5 ${className}`}>
      <h2 id={id} className="font-semibold wrap-anywhere">
        {title}
      </h2>
      {children}
    </section>
  );
}
