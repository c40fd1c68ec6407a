import { type ReactNode, useId, useRef } from "react";
import { Button } from "@/app/_ui/button";
import { USUAL_FACTORS } from "@/lib/sittings";
import type { MemberRow } from "./members-desk";

interface MemberDialogProps {
  readonly classId: string;
  readonly member: MemberRow;
  readonly otherClasses: readonly { readonly id: string; readonly name: string }[];
  readonly send: (form: FormData) => void;
}

/** What can be done to one member: extra time, another class, signing out, out of the class. */
export function MemberDialog({ classId, member, otherClasses, send }: MemberDialogProps) {
  const { person, timeFactor } = member;
  const dialog = useRef<HTMLDialogElement>(null);
  const id = useId();
  const close = () => dialog.current?.close();
  const sendOff = (form: FormData) => {
    close();
    send(form);
  };
  const formOf = (what: string, children: ReactNode) => (
    <form action={sendOff} className="mt-2 space-y-3">
      <input type="hidden" name="class" value={classId} />
      <input type="hidden" name="learner" value={person.id} />
      <input type="hidden" name="name" value={person.name} />
      <input type="hidden" name="what" value={what} />
      {children}
    </form>
  );
  const isUsual = USUAL_FACTORS.some((factor) => factor === timeFactor);
  return (
    <>
      <Button look="quiet" aria-label={`Change ${person.name}`} onClick={() => dialog.current?.showModal()}>
        Change
      </Button>
      <dialog
        ref={dialog}
        aria-labelledby={id}
        className="m-auto max-h-[90vh] w-full max-w-lg overflow-y-auto rounded-md border border-line bg-sheet p-6 text-left whitespace-normal text-ink wrap-anywhere backdrop:bg-black/50"
      >
        <h3 id={id} className="text-lg font-semibold">
          {person.name}
        </h3>
        <h4 className="mt-4 font-medium">Time in timed sections</h4>
        {formOf(
          "time",
          <>
            <fieldset key={timeFactor} className="flex flex-wrap items-center gap-x-5">
              <legend className="text-sm text-ink-2">
                How many times the usual time; 1 is the time that everybody has.
              </legend>
              {USUAL_FACTORS.map((factor) => (
                <label key={factor} className="flex min-h-11 cursor-pointer items-center gap-2">
                  <input
                    type="radio"
                    name="factor"
                    value={factor}
                    defaultChecked={factor === timeFactor}
                    className="size-5 accent-action"
                  />
                  {factor}
                </label>
              ))}
              <label className="flex min-h-11 cursor-pointer items-center gap-2">
                <input
                  type="radio"
                  name="factor"
                  value="other"
                  defaultChecked={!isUsual}
                  className="size-5 accent-action"
                />
                other
              </label>
              <input
                name="other"
                inputMode="decimal"
                aria-label="Other factor, from 1 to 5"
                placeholder="1 to 5"
                maxLength={4}
                defaultValue={isUsual ? undefined : timeFactor}
                // whoever types here means it
                onInput={({ currentTarget }) => {
                  const other = currentTarget.form?.elements.namedItem("factor");
                  if (other instanceof RadioNodeList) other.value = "other";
                }}
                className="h-11 w-24 rounded border border-ink-2 bg-white px-3"
              />
            </fieldset>
            <Button type="submit" look="quiet">
              Set the time
            </Button>
          </>,
        )}
        {otherClasses.length > 0 && (
          <>
            <h4 className="mt-5 font-medium">Another of your classes</h4>
            {formOf(
              "move",
              <>
                <label htmlFor={`${id}-target`} className="block text-sm text-ink-2">
                  Move {person.name} into
                </label>
                <div className="flex flex-wrap gap-3">
                  <select
                    id={`${id}-target`}
                    name="target"
                    className="h-11 min-w-40 flex-1 rounded border border-ink-2 bg-white px-3"
                  >
                    {otherClasses.map((other) => (
                      <option key={other.id} value={other.id}>
                        {other.name}
                      </option>
                    ))}
                  </select>
                  <Button type="submit" look="quiet">
                    Move
                  </Button>
                </div>
                <p className="mt-1 text-ink-2 text-sm">
                  Practice and its marks go along. What was sat in sittings of this class stays with this class, and
                  counts in no other.
                </p>
              </>,
            )}
          </>
        )}
        <h4 className="mt-5 font-medium">Devices</h4>
        {formOf(
          "sign-out",
          <Button type="submit" look="quiet">
            Sign out everywhere
          </Button>,
        )}
        <h4 className="mt-5 font-medium">Out of this class</h4>
        <p className="mt-1 text-sm text-ink-2">
          Account, reports and marks are kept. Who is in no class is seen by every tutor.
        </p>
        {formOf(
          "remove",
          <Button type="submit" look="quiet">
            Take out of the class
          </Button>,
        )}
        <div className="mt-6 border-t border-line pt-4">
          <Button look="quiet" onClick={close}>
            Close
          </Button>
        </div>
      </dialog>
    </>
  );
}
