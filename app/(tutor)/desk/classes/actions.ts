"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { problemOf, textsOf } from "@/app/_server/form-state";
import type { Refusal } from "@/app/_server/refusal";
import { currentCaller } from "@/app/_server/session";
import { moveMember, removeMember, setTimeFactor } from "@/app/_server/use-cases/class-members";
import { addClassTutor, removeClassTutor } from "@/app/_server/use-cases/class-tutors";
import { archiveClass, changeClass, changeJoinCode, makeClass } from "@/app/_server/use-cases/edit-class";
import { makeCodes } from "@/app/_server/use-cases/make-codes";
import { signOutLearner } from "@/app/_server/use-cases/sign-out-learner";
import type { SignInSlip } from "@/lib/workshop";
import type { Told } from "./told-form";

/** What came of a use case, for its form; the pages of the desk are drawn anew. */
function tell(result: { readonly ok: true } | Refusal, done: string, typed: Record<string, string> = {}): Told {
  if (!result.ok) return { problem: problemOf(result, typed) };
  revalidatePath("/desk", "layout");
  return { done, problem: null };
}

export async function makeNewClass(_before: Told | null, form: FormData): Promise<Told> {
  const input = textsOf(form);
  const made = await makeClass(await currentCaller(), input);
  if (!made.ok) return tell(made, "", input);
  revalidatePath("/desk", "layout");
  redirect(`/desk/classes/${made.id}`);
}

export async function changeDetails(_before: Told | null, form: FormData): Promise<Told> {
  const input = textsOf(form);
  return tell(await changeClass(await currentCaller(), input.class ?? "", input), "Stored.", input);
}

export async function archive(_before: Told | null, form: FormData): Promise<Told> {
  const input = textsOf(form);
  const isArchived = input.to === "archive";
  const done = isArchived ? "Archived." : "In use again.";
  return tell(await archiveClass(await currentCaller(), input.class ?? "", isArchived), done);
}

export async function switchJoinCode(_before: Told | null, form: FormData): Promise<Told> {
  const input = textsOf(form);
  const isOn = input.to === "new";
  const done = isOn ? "This code works now, and no other." : "Switched off: nobody joins by a code now.";
  return tell(await changeJoinCode(await currentCaller(), input.class ?? "", isOn), done);
}

export async function addTutorToClass(_before: Told | null, form: FormData): Promise<Told> {
  const input = textsOf(form);
  return tell(await addClassTutor(await currentCaller(), input.class ?? "", input.tutor ?? ""), "Added.");
}

export async function removeTutorFromClass(_before: Told | null, form: FormData): Promise<Told> {
  const input = textsOf(form);
  const caller = await currentCaller();
  const told = tell(await removeClassTutor(caller, input.class ?? "", input.tutor ?? ""), "Taken out.");
  // who takes themselves out has no such page any more
  if (told.problem === null && caller.actor?.id === input.tutor) redirect("/desk/classes");
  return told;
}

/** What came of something done to members: perhaps codes that are told this once. */
export interface MembersState {
  readonly told: Told | null;
  /** The last ones made, until others are. */
  readonly slips: readonly SignInSlip[];
  /** Raised by every answer, so that the same sentence is read out again. */
  readonly turn: number;
}

/** Does what the button that was pressed is for, to the member or members whom the form names. */
export async function changeMembers({ slips, turn }: MembersState, form: FormData): Promise<MembersState> {
  const { class: id = "", what, learner = "", name, ...input } = textsOf(form);
  const caller = await currentCaller();
  const after = (told: Told): MembersState => ({ told, slips, turn: turn + 1 });
  switch (what) {
    case "time": {
      const factor = Number((input.factor === "other" ? input.other : input.factor)?.replace(",", "."));
      const done = `${name} now has ${factor} times the usual time.`;
      return after(tell(await setTimeFactor(caller, id, learner, factor), done, input));
    }
    case "move": {
      const moved = await moveMember(caller, id, learner, input.target ?? "");
      const done = `${name} is in the class ${moved.ok ? moved.into : ""} now. Practice and its marks have gone along; sittings stay with the class that they were sat in.`;
      return after(tell(moved, done));
    }
    case "remove":
      return after(
        tell(
          await removeMember(caller, id, learner),
          `${name} is out of this class. Account, reports and marks are kept.`,
        ),
      );
    case "sign-out":
      return after(
        tell(await signOutLearner(caller, learner), `${name} is signed out everywhere. The password still works.`),
      );
    default: {
      const made = await makeCodes(caller, form.getAll("chosen"));
      if (!made.ok) return after(tell(made, ""));
      const told = tell(made, "The passwords before work no more, and every device of theirs is signed out.");
      return { told, slips: made.slips, turn: turn + 1 };
    }
  }
}
