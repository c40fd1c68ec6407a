import type { ReactNode } from "react";
import { Wordmark } from "@/app/_ui/wordmark";

export default function PublicLayout({ children }: { children: ReactNode }) {
  return (
    <>
      <header className="bg-bench text-bench-text">
        <div className="mx-auto max-w-6xl px-6 py-3">
          <Wordmark />
        </div>
      </header>
      {children}
    </>
  );
}
