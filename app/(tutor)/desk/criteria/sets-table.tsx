import Link from "next/link";
import { Button } from "@/app/_ui/button";
import { LocalTime } from "@/app/_ui/local-time";
import { builtInCriteria, type InHouseSet } from "@/lib/criteria";

interface SetsTableProps {
  readonly sets: readonly InHouseSet[];
  readonly action: (form: FormData) => Promise<void>;
  readonly actionLabel: string;
}

/** A row a set: what it is called, what it builds on, when it was changed. */
export function SetsTable({ sets, action, actionLabel }: SetsTableProps) {
  return (
    <div className="relative overflow-x-auto">
      <table className="mt-1 w-full text-left">
        <thead className="text-ink-2 text-sm">
          <tr>
            {["Set", "Builds on", "Own rows", "Made by", "Last changed"].map((heading) => (
              <th key={heading} scope="col" className="py-2 pr-4 font-medium">
                {heading}
              </th>
            ))}
            <th>
              <span className="sr-only">What you can do</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {sets.map(({ id, own, basedOn, madeBy, updatedAt, archivedAt }) => (
            <tr key={id} className="border-line border-t" data-set={id}>
              <th scope="row" className="min-w-40 py-2 pr-4 font-medium wrap-anywhere">
                <Link href={`/desk/criteria/${id}`} className="rounded py-2 text-action underline underline-offset-4">
                  {own.name}
                </Link>
                <span className="block font-normal text-ink-2 text-sm">{own.edition}</span>
              </th>
              <td className="py-2 pr-4">{basedOn === null ? "no other set" : builtInCriteria(basedOn)?.name}</td>
              <td className="py-2 pr-4">{own.rows.length}</td>
              <td className="py-2 pr-4 wrap-anywhere">{madeBy ?? "an account that is gone"}</td>
              <td className="py-2 pr-4">
                <LocalTime at={updatedAt} />
              </td>
              <td className="py-2">
                <div className="flex items-center justify-end gap-4">
                  {archivedAt === null && (
                    <Link
                      href={`/limits?sets=iso-5817-2014-b,iso-5817-2014-c,iso-5817-2014-d,${id}`}
                      aria-label={`Compare ${own.name}`}
                      className="inline-flex min-h-11 items-center whitespace-nowrap text-action underline underline-offset-4"
                    >
                      Compare
                    </Link>
                  )}
                  <form action={action}>
                    <input type="hidden" name="set" value={id} />
                    <Button type="submit" look="quiet" aria-label={`${actionLabel}: ${own.name}`}>
                      <span className="whitespace-nowrap">{actionLabel}</span>
                    </Button>
                  </form>
                </div>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
