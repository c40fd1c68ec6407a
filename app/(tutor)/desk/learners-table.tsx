import Link from "next/link";
import { LocalTime } from "@/app/_ui/local-time";
import { SECTION_NAMES } from "@/app/_ui/section-names";
import { Verdict } from "@/app/_ui/verdict";
import type { SectionMark } from "@/lib/practice";
import { shownMark } from "@/lib/results";
import type { Person } from "@/lib/workshop";
import { NewPassword } from "./new-password";

interface LearnersTableProps {
  readonly learners: readonly DeskLearner[];
  readonly send: (form: FormData) => void;
}

export interface DeskLearner {
  readonly person: Person;
  readonly openCount: number;
  readonly handedIn: readonly {
    readonly id: string;
    readonly handedInAt: Date;
    readonly marks: readonly SectionMark[];
  }[];
}

export function LearnersTable({ learners, send }: LearnersTableProps) {
  if (learners.length === 0) {
    return (
      <p className="mt-2 text-ink-2">
        Every learner gets a row here, with their last marks and what they have unfinished. Add the first one below.
      </p>
    );
  }
  return (
    <div className="relative overflow-x-auto">
      <table className="mt-1 w-full text-left">
        <thead className="text-sm text-ink-2">
          <tr>
            <th className="py-2 font-medium">Learner</th>
            <th className="py-2 pr-4 text-right font-medium">Handed in</th>
            <th className="py-2 pr-4 text-right font-medium">Unfinished</th>
            <th className="py-2 pr-4 font-medium whitespace-nowrap">Last plate</th>
            <th className="py-2 pr-4 font-medium">Mark</th>
            <th>
              <span className="sr-only">What you can do</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {learners.map(({ person, openCount, handedIn }) => (
            <tr key={person.id} className="border-t border-line">
              <th scope="row" className="min-w-32 py-2 pr-4 font-medium wrap-anywhere">
                <Link href={`/desk/${person.id}`} className="rounded py-2 text-action underline underline-offset-4">
                  {person.name}
                </Link>
                <span className="block font-mono text-sm font-normal text-ink-2">{person.signInName}</span>
              </th>
              <td className="py-2 pr-4 text-right">{handedIn.length}</td>
              <td className="py-2 pr-4 text-right">{openCount}</td>
              <LastPlate last={handedIn[0]} />
              <td className="py-2 text-right whitespace-nowrap">
                <NewPassword person={person} send={send} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function LastPlate({ last }: { readonly last: DeskLearner["handedIn"][number] | undefined }) {
  if (!last) {
    return (
      <td colSpan={2} className="py-2 text-ink-2">
        none yet
      </td>
    );
  }
  return (
    <>
      <td className="py-2 pr-4">
        <Link
          href={`/practice/${last.id}/marks`}
          className="rounded py-2 font-medium text-action underline underline-offset-4"
        >
          <LocalTime at={last.handedInAt} withTime={false} />
        </Link>
      </td>
      <td className="py-2 pr-4">
        {last.marks.map((mark) => (
          <span key={mark.section} className="block whitespace-nowrap">
            {last.marks.length > 1 && <span className="text-ink-2">{SECTION_NAMES[mark.section]} </span>}
            <span className="inline-block w-12 font-semibold">{shownMark(mark.markThousandths).toFixed(1)}</span>{" "}
            <Verdict isPassed={mark.isPassed} />
          </span>
        ))}
      </td>
    </>
  );
}
