import type { ReactNode } from "react";

interface MainCardProps {
  readonly title: string;
  readonly children: ReactNode;
  /** Of the heading, where a page has two such cards. */
  readonly id?: string;
}

/** The one big thing to do: a plate on dark steel. */
export function MainCard({ title, children, id = "main-card" }: MainCardProps) {
  return (
    <section aria-labelledby={id} className="min-w-0 rounded-md border border-transparent bg-bench p-6 text-bench-text">
      <PlateDrawing />
      <h2 id={id} className="mt-4 text-xl font-semibold">
        {title}
      </h2>
      {children}
    </section>
  );
}

/** A plate with its weld, seen from above. */
function PlateDrawing() {
  const ripples = Array.from({ length: 46 }, (_, i) => 8 + i * 8.4);
  return (
    <svg viewBox="0 0 400 56" className="h-16 w-full" preserveAspectRatio="xMidYMid slice" aria-hidden="true">
      <rect width="400" height="56" rx="2" className="fill-bench-2" />
      <rect y="20" width="400" height="16" fill="#6d757a" />
      {ripples.map((x) => (
        <path key={x} d={`M${x} 20.5q5 7.5 0 15`} fill="none" stroke="#4b5358" strokeWidth="1.2" />
      ))}
      <path d="M0 20h400M0 36h400" className="stroke-lamp" strokeWidth="1" opacity="0.7" />
    </svg>
  );
}
