import { Button } from "@/app/_ui/button";
import { Sheet } from "@/app/_ui/sheet";
import type { DemoAccount, signInFromDemo } from "./actions";

interface DemoAccountsProps {
  readonly workshop: string;
  readonly accounts: readonly DemoAccount[];
  /** Whether more people and what they have done are being written. */
  readonly withPast: boolean;
  readonly signIn: typeof signInFromDemo;
}

export function DemoAccounts({ workshop, accounts, withPast, signIn }: DemoAccountsProps) {
  return (
    <Sheet title={`${workshop} is open`} className="mt-6">
      <p className="mt-2 max-w-3xl" role="status">
        Note these passwords down or print this page now. <strong>They are not shown again</strong>, and nobody can read
        them out of the workshop later.
      </p>
      {withPast && (
        <p className="mt-2 max-w-3xl text-ink-2">
          Another 20 learners have passwords that nobody knows. To play one of them, give them a new code from the page
          of their class.
        </p>
      )}
      <table className="mt-4 w-full max-w-4xl text-left">
        <thead className="text-sm text-ink-2">
          <tr>
            <th className="py-2 font-medium">Who</th>
            <th className="py-2 font-medium">Sign-in name</th>
            <th className="py-2 font-medium">Password</th>
            <th className="py-2 print:hidden">
              <span className="sr-only">Begin as</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {accounts.map(({ name, signInName, role, password }) => (
            <tr key={signInName} className="border-t border-line">
              <th scope="row" className="py-2 font-medium">
                {name} <span className="font-normal text-ink-2">({role})</span>
              </th>
              <td className="py-2 font-mono">{signInName}</td>
              <td className="py-2 font-mono">{password}</td>
              <td className="py-2 text-right print:hidden">
                <form action={signIn}>
                  <input type="hidden" name="username" value={signInName} />
                  <input type="hidden" name="password" value={password} />
                  <Button type="submit" look={role === "tutor" ? "quiet" : "main"}>
                    Begin as {name.split(" ")[0]}
                  </Button>
                </form>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <div className="mt-4 print:hidden">
        <Button look="quiet" onClick={() => window.print()}>
          Print this page
        </Button>
      </div>
    </Sheet>
  );
}
