import Link from "next/link";
import type { Actor } from "@/app/_server/caller";
import { HeaderLink } from "./header-link";
import { Wordmark } from "./wordmark";

const LINKS = [
  { href: "/desk", label: "Desk", roles: ["tutor"] },
  { href: "/", label: "Today", roles: ["learner", "tutor"] },
  { href: "/drills", label: "Drills", roles: ["learner", "tutor"] },
  { href: "/limits", label: "Limits", roles: ["learner", "tutor"] },
  { href: "/history", label: "Marks", roles: ["learner", "tutor"] },
  { href: "/progress", label: "Progress", roles: ["learner", "tutor"] },
  { href: "/rule", label: "How marking works", roles: ["learner", "tutor"] },
] as const;

/** The slim bar over every page but the bench. */
export function SiteHeader({ actor, workshop, signOut }: SiteHeaderProps) {
  const links = LINKS.filter(({ roles }) => (roles as readonly string[]).includes(actor.role));
  return (
    <header className="bg-bench text-bench-text print:hidden">
      <div className="mx-auto flex max-w-6xl flex-wrap items-center gap-x-6 gap-y-1 px-6 py-2">
        <Link href={links[0].href} className="rounded py-1" aria-label={`Toeline, go to ${links[0].label}`}>
          <Wordmark />
        </Link>
        <nav aria-label="Pages" className="flex flex-wrap gap-1">
          {links.map(({ href, label }) => (
            <HeaderLink key={href} href={href}>
              {label}
            </HeaderLink>
          ))}
        </nav>
        <div className="ml-auto flex min-w-0 items-center gap-4 text-sm">
          <span className="hidden max-w-56 truncate text-bench-dim xl:inline">{workshop}</span>
          <Link href="/account" className="max-w-48 truncate rounded py-2 underline-offset-4 hover:underline">
            {actor.name}
          </Link>
          <form action={signOut}>
            <button
              type="submit"
              className="cursor-pointer rounded border border-bench-line whitespace-nowrap px-3 py-1.5 hover:bg-bench-2"
            >
              Sign out
            </button>
          </form>
        </div>
      </div>
    </header>
  );
}

interface SiteHeaderProps {
  readonly actor: Actor;
  readonly workshop: string;
  readonly signOut: () => Promise<void>;
}
