import { Notice } from "@/app/_ui/notice";
import type { AccessState } from "./actions";

/** The new password, this once, or why there is none. */
export function AccessSlip({ state }: { readonly state: AccessState | null }) {
  if (!state) return null;
  if (!state.isGiven) return <Notice>{state.problem.message}</Notice>;
  const { name, signInName, password } = state.access;
  return (
    <Notice isGood>
      {name} signs in as <strong className="font-mono">{signInName}</strong> with the password{" "}
      <strong className="font-mono whitespace-nowrap">{password}</strong>. It is shown this once: note it down now.
    </Notice>
  );
}
