"use client";
import Link from "next/link";
import { Button } from "@/app/_ui/button";

interface PaperBarProps {
  readonly title: string;
  readonly back: { readonly href: string; readonly name: string };
  /** Null when all is there to print. */
  readonly waitsFor: string | null;
}

/** Over a print, on the screen alone: the way back, and the button that prints. */
export function PaperBar({ title, back, waitsFor }: PaperBarProps) {
  return (
    <nav
      aria-label={title}
      data-ready={waitsFor === null}
      className="sticky top-0 z-10 flex flex-wrap items-center gap-x-5 gap-y-2 bg-bench px-6 py-2 text-bench-text print:hidden"
    >
      <Link
        href={back.href}
        className="inline-flex min-h-11 items-center rounded border border-bench-dim px-4 hover:bg-bench-2"
      >
        {back.name}
      </Link>
      <Button look="lamp" onClick={() => window.print()} disabled={waitsFor !== null}>
        Print
      </Button>
      <p role="status" className="text-sm text-bench-dim">
        {waitsFor ?? "A4 at 100 %, without fitting to the page. For a PDF choose it as the printer."}
      </p>
    </nav>
  );
}
