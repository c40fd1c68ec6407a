import Link from "next/link";
import { Button } from "@/app/_ui/button";
import { LocalTime } from "@/app/_ui/local-time";
import { SECTION_NAMES } from "@/app/_ui/section-names";
import type { KeptPaper } from "@/lib/sittings";
import { copy } from "./actions";

interface PapersTableProps {
  readonly papers: readonly KeptPaper[];
  readonly action: (form: FormData) => Promise<void>;
  readonly actionLabel: string;
}

/** A row a paper: what it is called, its sections at a glance, its version and whether that is in use. */
export function PapersTable({ papers, action, actionLabel }: PapersTableProps) {
  return (
    <div className="relative overflow-x-auto">
      <table className="mt-1 w-full text-left">
        <thead className="text-ink-2 text-sm">
          <tr>
            {["Paper", "Sections", "Version", "In use", "Last saved"].map((heading) => (
              <th key={heading} scope="col" className="py-2 pr-4 font-medium">
                {heading}
              </th>
            ))}
            <th>
              <span className="sr-only">What you can do</span>
            </th>
          </tr>
        </thead>
        <tbody className="[&_td]:align-top [&_th]:align-top">
          {papers.map(({ id, current, madeBy, updatedAt }) => (
            <tr key={id} className="border-line border-t" data-paper={id}>
              <th scope="row" className="min-w-40 py-3 pr-4 font-medium wrap-anywhere">
                <Link href={`/desk/papers/${id}`} className="rounded py-2 text-action underline underline-offset-4">
                  {current.paper.name}
                </Link>
                <span className="block font-normal text-ink-2 text-sm">by {madeBy ?? "an account that is gone"}</span>
              </th>
              <td className="py-3 pr-4">
                {current.paper.sections.map(({ section, minutes, passMark }) => (
                  <span key={section} className="block">
                    {SECTION_NAMES[section]}{" "}
                    <span className="text-ink-2 text-sm whitespace-nowrap">
                      {minutes} min, {passMark} to pass
                    </span>
                  </span>
                ))}
              </td>
              <td className="py-3 pr-4">{current.number}</td>
              <td className="py-3 pr-4 whitespace-nowrap">
                {current.usedAt ? (
                  <>
                    since <LocalTime at={current.usedAt} withTime={false} />
                  </>
                ) : (
                  "not yet"
                )}
              </td>
              <td className="py-3 pr-4">
                <LocalTime at={updatedAt} />
              </td>
              <td className="py-2">
                <div className="flex items-center justify-end gap-2">
                  <RowAction action={copy} id={id} label="Copy" name={current.paper.name} />
                  <RowAction action={action} id={id} label={actionLabel} name={current.paper.name} />
                </div>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

interface RowActionProps {
  readonly action: (form: FormData) => Promise<void>;
  readonly id: string;
  readonly label: string;
  readonly name: string;
}

function RowAction({ action, id, label, name }: RowActionProps) {
  return (
    <form action={action}>
      <input type="hidden" name="paper" value={id} />
      <Button type="submit" look="quiet" aria-label={`${label}: ${name}`}>
        <span className="whitespace-nowrap">{label}</span>
      </Button>
    </form>
  );
}
