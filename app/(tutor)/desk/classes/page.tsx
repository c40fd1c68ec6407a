import type { Metadata } from "next";
import Link from "next/link";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { listClasses } from "@/app/_server/use-cases/list-classes";
import { PageFrame } from "@/app/_ui/page-frame";
import { Sheet } from "@/app/_ui/sheet";
import type { ClassGroup } from "@/lib/classes";
import { countLearners } from "../describe-desk";
import { makeNewClass } from "./actions";
import { NewClassForm } from "./new-class-form";

export const metadata: Metadata = { title: "Classes" };

export default async function ClassesPage() {
  const classes = await listClasses(await currentCaller());
  if (!classes.ok) return showRefusal(classes);
  const { inUse, archived } = classes;
  return (
    <PageFrame title="Classes" lead="The classes that you are a tutor of. Other tutors' classes are theirs alone.">
      <Link href="/desk" className="mt-3 inline-block rounded py-2 text-action underline underline-offset-4">
        Back to the desk
      </Link>
      <div className="mt-3 grid items-start gap-5 lg:grid-cols-2">
        <Sheet title="In use">
          {inUse.length === 0 ? (
            <p className="mt-2 text-ink-2">
              Every class gets a line here. Make the first one; then bring a list of its learners, or give them its join
              code.
            </p>
          ) : (
            <ClassList classes={inUse} />
          )}
        </Sheet>
        <Sheet title="Make a class">
          <NewClassForm make={makeNewClass} />
        </Sheet>
        {archived.length > 0 && (
          <Sheet title="Archived">
            <ClassList classes={archived} />
          </Sheet>
        )}
      </div>
    </PageFrame>
  );
}

function ClassList({ classes }: { readonly classes: readonly ClassGroup[] }) {
  return (
    <ul className="mt-2">
      {classes.map(({ id, name, memberCount, tutors }) => (
        <li key={id} className="border-t border-line py-2 first:border-0 wrap-anywhere">
          <Link
            href={`/desk/classes/${id}`}
            className="inline-flex min-h-11 items-center rounded font-medium text-action underline underline-offset-4"
          >
            {name}
          </Link>
          <span className="block text-sm text-ink-2">
            {countLearners(memberCount)}, with {tutors.map((tutor) => tutor.name).join(", ")}
          </span>
          <Link
            href={`/desk/classes/${id}/progress`}
            aria-label={`What it still misses: ${name}`}
            className="inline-flex min-h-11 items-center rounded text-action underline underline-offset-4"
          >
            What it still misses
          </Link>
        </li>
      ))}
    </ul>
  );
}
