import Link from "next/link";
import { Sheet } from "@/app/_ui/sheet";
import type { ClassGroup } from "@/lib/classes";
import { countLearners } from "./describe-desk";

/** A way from the desk to what each class still misses; nothing while no class has anybody in it. */
export function WhatClassesMiss({ classes }: { readonly classes: readonly ClassGroup[] }) {
  const withLearners = classes.filter(({ memberCount }) => memberCount > 0);
  if (withLearners.length === 0) return null;
  return (
    <Sheet title="What your classes still miss" className="mt-5">
      <ul className="mt-1 grid gap-x-5 md:grid-cols-2">
        {withLearners.map(({ id, name, memberCount }) => (
          <li key={id} className="py-1 wrap-anywhere">
            <Link
              href={`/desk/classes/${id}/progress`}
              aria-label={`What it still misses: ${name}`}
              className="inline-flex min-h-11 items-center rounded font-medium text-action underline underline-offset-4"
            >
              {name}
            </Link>
            <span className="ml-2 text-ink-2 text-sm">{countLearners(memberCount)}</span>
          </li>
        ))}
      </ul>
    </Sheet>
  );
}
