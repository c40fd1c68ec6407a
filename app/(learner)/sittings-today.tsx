import Link from "next/link";
import type { OwnSitting } from "@/app/_server/sitting-views";
import { LocalTime } from "@/app/_ui/local-time";
import { Sheet } from "@/app/_ui/sheet";
import { MainCard } from "./main-card";
import { standingOf } from "./sitting-words";

/** How many sittings that are over stand on Today; the others are among the marks. */
const OVER_SHOWN = 3;

interface SittingsProps {
  /** The latest planned first. */
  readonly sittings: readonly OwnSitting[];
}

/** Sittings that the learner has something to do in now: they come before everything else. */
export function SittingsNow({ sittings }: SittingsProps) {
  const on = sittings.filter((one) => standingOf(one).isOn);
  if (on.length === 0) return null;
  return (
    <div className="mt-6 grid gap-5">
      {on.map((sitting) => (
        <MainCard
          key={sitting.id}
          id={`sitting-${sitting.id}`}
          title={`Sitting: ${sitting.paperName}, ${sitting.className}`}
        >
          <p className="mt-1 text-bench-dim">
            Planned for <LocalTime at={sitting.plannedAt} />. {standingOf(sitting, !needsToCome(sitting)).next}
          </p>
          <Link
            href={`/sitting/${sitting.id}`}
            prefetch={false}
            className="mt-5 inline-block rounded border border-transparent bg-lamp px-8 py-4 font-medium text-ink text-lg hover:brightness-95"
          >
            {hasBegun(sitting) ? "Go on with the sitting" : "To the sitting"}
          </Link>
        </MainCard>
      ))}
    </div>
  );
}

/** Sittings to come and sittings that are over. */
export function SittingsSheet({ sittings }: SittingsProps) {
  const others = sittings.filter((one) => !standingOf(one).isOn);
  const toCome = others.filter(({ state }) => state === "planned").toReversed();
  const over = others.filter(({ state }) => state !== "planned").slice(0, OVER_SHOWN);
  if (toCome.length + over.length === 0) return null;
  return (
    <Sheet title="Sittings" className="mt-5">
      <ul className="mt-3 divide-y divide-line">
        {[...toCome, ...over].map((sitting) => (
          <li key={sitting.id} className="flex flex-wrap items-center justify-between gap-x-6 gap-y-2 py-3">
            <p className="min-w-0 flex-1 basis-80">
              <span className="font-medium">
                {sitting.paperName}, {sitting.className}.
              </span>{" "}
              {sitting.state === "planned" ? "Planned for" : "Was planned for"} <LocalTime at={sitting.plannedAt} />.{" "}
              {standingOf(sitting).next}
            </p>
            <Link
              href={`/sitting/${sitting.id}`}
              prefetch={false}
              className="flex min-h-11 items-center rounded border border-ink-2 px-4 font-medium whitespace-nowrap hover:bg-paper-2"
            >
              {sitting.state === "planned" ? "Read the paper" : "See the sitting"}
            </Link>
          </li>
        ))}
      </ul>
    </Sheet>
  );
}

const hasBegun = ({ sections }: OwnSitting) => sections.some(({ state }) => state !== "waiting");
const needsToCome = (sitting: OwnSitting) => sitting.state === "open" || !hasBegun(sitting);
