import type { Person } from "@/lib/workshop";

/** Who asks. */
export type Actor = Pick<Person, "id" | "name" | "role" | "hasOneTimeCode">;

/** What every use case is told: who asks (null for somebody not signed in) and the time. */
export interface Caller {
  readonly actor: Actor | null;
  readonly clock: () => Date;
  /** The session that asks, where there is one. */
  readonly sessionId?: string;
  /** The address of the socket, to count tries by. */
  readonly address?: string;
}
