import type { SpecimenSource } from "@/app/_server/generation/specimen-source";
import type { enterSitting } from "@/app/_server/use-cases/enter-sitting";
import { type RandomStream, randomStream } from "@/lib/random";
import type { JointKind } from "@/lib/weld";
import type { Person } from "@/lib/workshop";
import { listPeople } from "@/prisma/stores/people";
import { DEMO_SEED } from "./pieces";

export type Caller = Parameters<typeof enterSitting>[0];

/** What the past is written with. */
export interface Writing {
  /** The day on which the past ends. */
  readonly openedAt: Date;
  /** Waits until a piece of the demo is made; its id. */
  readonly piece: (key: string) => Promise<string>;
  /** Where everybody's pieces come from, for what nobody has inspected yet. */
  readonly specimens: SpecimenSource;
}

/** One thing that happened. Written again, it changes nothing, so that whatever was cut short is gone over once more. */
export interface Entry {
  readonly at: Date;
  readonly write: (writing: Writing) => Promise<void>;
}

export async function personOf(signInName: string): Promise<Person> {
  const people = [...(await listPeople("tutor")), ...(await listPeople("learner"))];
  const found = people.find((person) => person.signInName === signInName);
  if (!found) throw new Error(`nobody signs in as ${signInName}`);
  return found;
}

/** Somebody as use cases are asked by them at a time. */
export const callerAt = ({ id, name, role }: Person, at: Date): Caller => ({
  actor: { id, name, role, hasOneTimeCode: false },
  clock: () => at,
});

/** A source that hands out pieces that are made. */
export function sourceOf(pieces: Readonly<Partial<Record<JointKind, string>>>): SpecimenSource {
  const give = async (kind: JointKind) => {
    const specimenId = pieces[kind];
    if (specimenId === undefined) throw new Error(`no ${kind} was made for this`);
    return { specimenId };
  };
  return {
    takeReady: give,
    requestOne: give,
    orderAhead: give,
    orderForDrills: async () => undefined,
    hurry: async () => undefined,
    stageOf: async () => ({ state: "taken", stage: "" }),
    foresee: async () => {
      throw new Error("no outlook was made for this");
    },
    drawAhead: async () => {
      throw new Error("nothing is chosen for this");
    },
  };
}

export const demoStream = (name: string): RandomStream => randomStream(DEMO_SEED).child(name);

type Answer = { readonly ok: true } | { readonly ok: false; readonly code: string };

/** What was answered; throws where it was refused, unless for one of the reasons given: then null. */
export async function done<A extends Answer>(
  answering: Promise<A>,
  ...unless: readonly string[]
): Promise<Extract<A, { readonly ok: true }> | null> {
  const answer = await answering;
  if (answer.ok) return answer as Extract<A, { readonly ok: true }>;
  if (unless.includes(answer.code)) return null;
  throw new Error(`refused: ${answer.code} ${JSON.stringify(answer)}`);
}
