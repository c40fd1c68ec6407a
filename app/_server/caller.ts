import type { Person } from "@/lib/workshop";

/** Who asks. */
export type Actor = Pick<Person, "id" | "name" | "role">;

/** What every use case is told: who asks (null for somebody not signed in) and the time. */
export interface Caller {
  readonly actor: Actor | null;
  readonly clock: () => Date;
}
