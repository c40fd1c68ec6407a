import Link from "next/link";
import type { ReactNode } from "react";
import type { DueInClass, ListedSitting } from "@/app/_server/sitting-views";
import { LocalTime } from "@/app/_ui/local-time";
import { Sheet } from "@/app/_ui/sheet";
import type { ErasureRequest } from "@/prisma/stores/erasure";
import { count, STATE_WORDS } from "./sittings/sitting-words";

interface NeedsMeProps {
  readonly sittings: readonly ListedSitting[];
  readonly dues: readonly DueInClass[];
  readonly erasureRequests: readonly ErasureRequest[];
}

/** What wants something of the tutor now: sittings that are on, marks to release, sections due again, the next sitting. */
export function NeedsMe({ sittings, dues, erasureRequests }: NeedsMeProps) {
  const on = sittings.filter(({ state }) => state === "open" || state === "running" || state === "paused");
  const toRelease = sittings.filter(({ state }) => state === "closed");
  // the list has the latest planned first
  const next = sittings.findLast(({ state }) => state === "planned");
  const nothing = on.length + toRelease.length + dues.length + erasureRequests.length === 0;
  return (
    <Sheet title="What needs you now" className="mt-5">
      {nothing && (
        <p className="mt-2 text-ink-2">
          {next
            ? "Nothing just now; the next sitting is below."
            : "Nothing just now. Sittings that are on, marks to release and sections due again come up here."}
        </p>
      )}
      <ul className="mt-1">
        {on.map((sitting) => (
          <Item key={sitting.id} href={`/desk/sittings/${sitting.id}`} title={`Watch ${nameOf(sitting)}`}>
            {STATE_WORDS[sitting.state]}; {count(sitting.learners, "learner")}, {sitting.closed} of {sitting.sections}{" "}
            sections closed
          </Item>
        ))}
        {toRelease.map((sitting) => (
          <Item key={sitting.id} href={`/desk/sittings/${sitting.id}`} title={`Release the marks: ${nameOf(sitting)}`}>
            closed; {sitting.closed} of {sitting.sections} sections were sat
          </Item>
        ))}
        {dues.map(({ classId, className, paperId, paperName, learners }) => (
          <Item
            key={`${classId} ${paperId}`}
            href={`/desk/sittings/new?class=${classId}&paper=${paperId}&who=due`}
            title={`Plan what is due again: ${className}, ${paperName}`}
          >
            {learners.map(({ name }) => name).join(", ")}
          </Item>
        ))}
        {erasureRequests.map(({ learner, askedAt }) => (
          <Item key={learner.id} href={`/desk/${learner.id}/erase`} title={`Asks to be erased: ${learner.name}`}>
            since <LocalTime at={askedAt} />
          </Item>
        ))}
        {next && (
          <Item href={`/desk/sittings/${next.id}`} title={`Next sitting: ${nameOf(next)}`}>
            <LocalTime at={next.plannedAt} />, {count(next.learners, "learner")}
          </Item>
        )}
      </ul>
    </Sheet>
  );
}

const nameOf = ({ className, paperName }: ListedSitting): string => `${className}, ${paperName}`;

interface ItemProps {
  readonly href: string;
  readonly title: string;
  readonly children: ReactNode;
}

function Item({ href, title, children }: ItemProps) {
  return (
    <li className="border-line border-t py-1.5 first:border-0 wrap-anywhere">
      <Link
        href={href}
        className="inline-flex min-h-11 items-center rounded font-medium text-action underline underline-offset-4"
      >
        {title}
      </Link>
      <span className="block text-ink-2 text-sm">{children}</span>
    </li>
  );
}
