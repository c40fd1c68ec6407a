import type { Metadata } from "next";
import Link from "next/link";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { readPlanChoices } from "@/app/_server/use-cases/read-plan-choices";
import { Caution } from "@/app/_ui/caution";
import { PageFrame } from "@/app/_ui/page-frame";
import { PlanForm } from "./plan-form";

export const metadata: Metadata = { title: "Plan a sitting" };

export default async function NewSittingPage({ searchParams }: PageProps<"/desk/sittings/new">) {
  const [choices, asked] = await Promise.all([readPlanChoices(await currentCaller()), searchParams]);
  if (!choices.ok) return showRefusal(choices);
  const { classes, papers, dues } = choices;
  const one = (value: string | string[] | undefined) => (typeof value === "string" ? value : null);
  return (
    <PageFrame
      title="Plan a sitting"
      lead="Choose who sits which paper and when. Pieces are made from now on, so that nobody waits for theirs."
    >
      <Link href="/desk/sittings" className="mt-2 inline-block rounded py-2 text-action underline underline-offset-4">
        All sittings
      </Link>
      {classes.length === 0 ? (
        <Missing href="/desk/classes" what="Make a class">
          A sitting is planned for a class, and you have none in use yet.
        </Missing>
      ) : papers.length === 0 ? (
        <Missing href="/desk/papers/new" what="Make a paper">
          A sitting is made of a paper, and there is none at hand yet.
        </Missing>
      ) : (
        <PlanForm
          classes={classes}
          papers={papers}
          dues={dues}
          asked={{ classId: one(asked.class), paperId: one(asked.paper), isDue: asked.who === "due" }}
        />
      )}
      <Caution />
    </PageFrame>
  );
}

interface MissingProps {
  readonly href: "/desk/classes" | "/desk/papers/new";
  readonly what: string;
  readonly children: string;
}

function Missing({ href, what, children }: MissingProps) {
  return (
    <p className="mt-4">
      {children}{" "}
      <Link href={href} className="text-action underline underline-offset-4">
        {what}
      </Link>{" "}
      first.
    </p>
  );
}
