import Link from "next/link";

/** In place of the bench, for a piece that it cannot show. */
export function NoBench() {
  return (
    <main id="main" className="grid min-h-dvh place-items-center p-6">
      <div className="max-w-md">
        <h1 className="text-xl font-semibold">This bench takes butt plates only</h1>
        <p className="mt-2 text-ink-2">Your fillet weld and everything written about it is kept.</p>
        <Link href="/" className="mt-4 inline-flex min-h-11 items-center text-action underline">
          Back to Today
        </Link>
      </div>
    </main>
  );
}
