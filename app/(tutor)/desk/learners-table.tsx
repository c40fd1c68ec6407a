import type { Person } from "@/lib/workshop";
import { LastPlate, type MarkedPlate } from "./last-plate";
import { LearnerName } from "./learner-name";
import { NewCode } from "./new-code";

interface LearnersTableProps {
  readonly learners: readonly DeskLearner[];
  readonly send: (form: FormData) => void;
}

export interface DeskLearner {
  readonly person: Person;
  readonly openCount: number;
  readonly handedIn: readonly MarkedPlate[];
}

export function LearnersTable({ learners, send }: LearnersTableProps) {
  if (learners.length === 0) {
    return (
      <p className="mt-2 text-ink-2">
        Learners who are in no class get a row here, with their last marks and what they have unfinished. Those of your
        classes are on the page of their class.
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
              <LearnerName person={person} />
              <td className="py-2 pr-4 text-right">{handedIn.length}</td>
              <td className="py-2 pr-4 text-right">{openCount}</td>
              <LastPlate last={handedIn[0]} />
              <td className="py-2 text-right whitespace-nowrap">
                <NewCode person={person} send={send} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
