import type { Metadata } from "next";
import Link from "next/link";
import { currentCaller, showRefusal } from "@/app/_server/session";
import type { ListedSitting } from "@/app/_server/sitting-views";
import { readSittingsDesk } from "@/app/_server/use-cases/read-sittings-desk";
import { Caution } from "@/app/_ui/caution";
import { PageFrame } from "@/app/_ui/page-frame";
import { Sheet } from "@/app/_ui/sheet";
import type { SittingState } from "@/lib/sittings";
import { DueList } from "./due-list";
import { SittingList } from "./sitting-list";

export const metadata: Metadata = { title: "Sittings" };

interface Group {
  readonly title: string;
  readonly states: readonly SittingState[];
  /** The next one first, not the last one. */
  readonly isSoonestFirst?: boolean;
}

/** In the order in which they want something of the tutor. */
const GROUPS: readonly Group[] = [
  { title: "On now", states: ["open", "running", "paused"] },
  { title: "Marks to release", states: ["closed"] },
  { title: "Planned", states: ["planned"], isSoonestFirst: true },
  { title: "Released", states: ["released"] },
  { title: "Void", states: ["void"] },
];

export default async function SittingsPage() {
  const desk = await readSittingsDesk(await currentCaller());
  if (!desk.ok) return showRefusal(desk);
  const { sittings, dues, hasClass } = desk;
  const groups = GROUPS.map((group) => ({ ...group, sittings: among(sittings, group) })).filter(
    (group) => group.sittings.length > 0,
  );
  return (
    <PageFrame
      title="Sittings"
      lead="A sitting is a paper set for a class at a time. You open it, begin it, watch it on its board, close it, and release the marks."
    >
      <div className="mt-5 flex flex-wrap items-center gap-x-6 gap-y-2">
        {hasClass && (
          <Link
            href="/desk/sittings/new"
            className="inline-flex min-h-11 items-center rounded bg-action px-5 font-medium text-white hover:bg-action-2"
          >
            Plan a sitting
          </Link>
        )}
        <Link href="/desk" className="inline-flex min-h-11 items-center text-action underline underline-offset-4">
          Back to the desk
        </Link>
      </div>
      {!hasClass && (
        <p className="mt-4 max-w-3xl">
          A sitting is planned for a class, and you have none in use yet.{" "}
          <Link href="/desk/classes" className="text-action underline underline-offset-4">
            Make a class
          </Link>{" "}
          first.
        </p>
      )}
      {hasClass && sittings.length === 0 && (
        <p className="mt-4 max-w-3xl">
          No sitting yet. Plan the first one: choose a class and a paper, and its pieces are made ahead.
        </p>
      )}
      <div className="mt-4 grid items-start gap-5 lg:grid-cols-2">
        {groups.map(({ title, sittings }) => (
          <Sheet key={title} title={title}>
            <SittingList sittings={sittings} />
          </Sheet>
        ))}
        {dues.length > 0 && (
          <Sheet title="Due again">
            <DueList dues={dues} />
          </Sheet>
        )}
      </div>
      <Caution />
    </PageFrame>
  );
}

function among(sittings: readonly ListedSitting[], { states, isSoonestFirst }: Group): readonly ListedSitting[] {
  const found = sittings.filter(({ state }) => states.includes(state));
  return isSoonestFirst ? found.toReversed() : found;
}
