"use client";

import Link from "next/link";
import { usePathname } from "next/navigation";
import type { ReactNode } from "react";

export function HeaderLink({ href, children }: { readonly href: string; readonly children: ReactNode }) {
  const path = usePathname();
  const isUnder = href !== "/" && path.startsWith(`${href}/`);
  return (
    <Link
      href={href}
      aria-current={path === href ? "page" : isUnder ? "true" : undefined}
      className="rounded px-3 py-2 forced-colors:[&[aria-current]]:underline text-sm text-bench-dim hover:bg-bench-2 hover:text-bench-text [&[aria-current]]:bg-bench-2 [&[aria-current]]:text-bench-text [&[aria-current]]:shadow-[inset_0_-2px_0_var(--color-lamp)]"
    >
      {children}
    </Link>
  );
}
