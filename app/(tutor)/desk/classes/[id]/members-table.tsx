import { LastPlate } from "../../last-plate";
import { LearnerName } from "../../learner-name";
import { MemberDialog } from "./member-dialog";
import type { MemberRow } from "./members-desk";

interface MembersTableProps {
  readonly classId: string;
  readonly isArchived: boolean;
  readonly members: readonly MemberRow[];
  readonly otherClasses: readonly { readonly id: string; readonly name: string }[];
  readonly chosen: ReadonlySet<string>;
  readonly setChosen: (chosen: ReadonlySet<string>) => void;
  readonly send: (form: FormData) => void;
}

export function MembersTable({ members, isArchived, chosen, setChosen, ...rest }: MembersTableProps) {
  if (members.length === 0) {
    return (
      <p className="mt-3 text-ink-2">
        {isArchived
          ? "Nobody was in this class when it was archived."
          : "Nobody is in this class yet. Bring a list of names, or make a join code below and write it on the board."}
      </p>
    );
  }
  const isAll = members.every(({ person }) => chosen.has(person.id));
  const toggle = (id: string) =>
    setChosen(new Set(chosen.has(id) ? [...chosen].filter((one) => one !== id) : [...chosen, id]));
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls has to be reached by the keyboard
    <section aria-label="Table of members" tabIndex={0} className="relative mt-2 overflow-x-auto">
      <table className="w-full text-left">
        <thead className="text-sm text-ink-2">
          <tr>
            {!isArchived && (
              <th className="w-11">
                <Choice
                  label="Choose everybody"
                  isChosen={isAll}
                  toggle={() => setChosen(new Set(isAll ? [] : members.map(({ person }) => person.id)))}
                />
              </th>
            )}
            <th className="py-2 font-medium">Learner</th>
            <th className="py-2 pr-4 text-right font-medium">Handed in</th>
            <th className="py-2 pr-4 text-right font-medium">Unfinished</th>
            <th className="py-2 pr-4 font-medium whitespace-nowrap">Last plate</th>
            <th className="py-2 pr-4 font-medium">Mark</th>
            <th className="py-2 pr-4 text-right font-medium">Time</th>
            {!isArchived && (
              <th>
                <span className="sr-only">What you can do</span>
              </th>
            )}
          </tr>
        </thead>
        <tbody>
          {members.map((member) => (
            <tr key={member.person.id} className="border-t border-line">
              {!isArchived && (
                <td>
                  <Choice
                    label={`Choose ${member.person.name}`}
                    isChosen={chosen.has(member.person.id)}
                    toggle={() => toggle(member.person.id)}
                  />
                </td>
              )}
              <LearnerName person={member.person} />
              <td className="py-2 pr-4 text-right">{member.handedInCount}</td>
              <td className="py-2 pr-4 text-right">{member.openCount}</td>
              <LastPlate last={member.last} />
              <td className="py-2 pr-4 text-right whitespace-nowrap">× {member.timeFactor}</td>
              {!isArchived && (
                <td className="py-2 text-right whitespace-nowrap">
                  <MemberDialog member={member} {...rest} />
                </td>
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

interface ChoiceProps {
  readonly label: string;
  readonly isChosen: boolean;
  readonly toggle: () => void;
}

function Choice({ label, isChosen, toggle }: ChoiceProps) {
  return (
    <label className="flex size-11 cursor-pointer items-center justify-start">
      <input type="checkbox" checked={isChosen} onChange={toggle} className="size-5 accent-action" />
      <span className="sr-only">{label}</span>
    </label>
  );
}
