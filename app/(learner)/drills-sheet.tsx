import Link from "next/link";
import { Sheet } from "@/app/_ui/sheet";

/** The way to the drills. */
export function DrillsSheet({ className }: { readonly className?: string }) {
  return (
    <Sheet title="Drills" className={className}>
      <p className="mt-2 text-ink-2">
        Short exercises away from the bench: spot, name, tell apart and size what is on a weld; read a scale, seat a
        gauge, find the largest. Each answer is told at once.
      </p>
      <Link
        href="/drills"
        className="mt-3 inline-flex min-h-11 items-center rounded border border-ink-2 px-4 font-medium hover:bg-paper-2"
      >
        To the drills
      </Link>
    </Sheet>
  );
}
