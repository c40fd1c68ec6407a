import Link from "next/link";
import type { Person } from "@/lib/workshop";

/** The first cell of a learner's row: name, sign-in name, and whether they have ever signed in with their code. */
export function LearnerName({ person }: { readonly person: Person }) {
  return (
    <th scope="row" className="min-w-32 py-2 pr-4 font-medium wrap-anywhere">
      <Link href={`/desk/${person.id}`} className="rounded py-2 text-action underline underline-offset-4">
        {person.name}
      </Link>
      <span className="block font-mono text-sm font-normal text-ink-2">{person.signInName}</span>
      {person.hasOneTimeCode && (
        <span className="block text-sm font-normal text-ink-2">one-time code, no own password yet</span>
      )}
    </th>
  );
}
