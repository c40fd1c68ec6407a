import Link from "next/link";
import type { ReactNode } from "react";

/** Pages of the desk, each with a sentence on what is there now. */
export function DeskLinks({ links }: { readonly links: readonly DeskLink[] }) {
  return (
    <nav aria-label="On your desk" className="mt-6 grid gap-5 md:grid-cols-2">
      {links.map(({ href, title, text }) => (
        <Link
          key={href}
          href={href}
          className="block rounded-md border border-line bg-sheet p-5 hover:border-ink-2 hover:bg-paper-2"
        >
          <span className="font-semibold text-action underline underline-offset-4">{title}</span>
          <span className="mt-1 block text-ink-2 wrap-anywhere">{text}</span>
        </Link>
      ))}
    </nav>
  );
}

export interface DeskLink {
  readonly href: string;
  readonly title: string;
  readonly text: ReactNode;
}
