import { useRef } from "react";
import { Button } from "@/app/_ui/button";
import type { Person } from "@/lib/workshop";

interface NewCodeProps {
  readonly person: Pick<Person, "id" | "name">;
  readonly send: (form: FormData) => void;
}

/** Asks before it takes somebody's password away. */
export function NewCode({ person, send }: NewCodeProps) {
  const question = useRef<HTMLDialogElement>(null);
  const give = (form: FormData) => {
    question.current?.close();
    send(form);
  };
  const title = `question-${person.id}`;
  return (
    <>
      <Button look="quiet" aria-label={`New code for ${person.name}`} onClick={() => question.current?.showModal()}>
        New code
      </Button>
      <dialog
        ref={question}
        aria-labelledby={title}
        className="m-auto w-full max-w-lg rounded-md border border-line bg-sheet p-6 text-left whitespace-normal text-ink wrap-anywhere backdrop:bg-black/50"
      >
        <h3 id={title} className="text-lg font-semibold">
          A new one-time code for {person.name}?
        </h3>
        <p className="mt-2">
          {person.name.split(" ")[0]}'s present password stops working at once, and every device signed in with it is
          signed out. Reports and marks stay as they are.
        </p>
        <form action={give} className="mt-5 flex flex-wrap gap-3">
          <input type="hidden" name="learner" value={person.id} />
          <Button look="quiet" onClick={() => question.current?.close()}>
            Keep the present password
          </Button>
          <Button type="submit">Make a new code</Button>
        </form>
      </dialog>
    </>
  );
}
