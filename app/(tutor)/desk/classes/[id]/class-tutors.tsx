"use client";

import { useId } from "react";
import { Button } from "@/app/_ui/button";
import { Sheet } from "@/app/_ui/sheet";
import type { ClassGroup } from "@/lib/classes";
import type { addTutorToClass, removeTutorFromClass } from "../actions";
import { ToldForm } from "../told-form";

interface ClassTutorsProps {
  readonly group: ClassGroup;
  /** Tutors of the workshop who are not of this class. */
  readonly others: readonly { readonly id: string; readonly name: string }[];
  readonly add: typeof addTutorToClass;
  readonly remove: typeof removeTutorFromClass;
}

export function ClassTutors({ group, others, add, remove }: ClassTutorsProps) {
  const id = useId();
  const isOpen = group.archivedAt === null;
  return (
    <Sheet title="Tutors of this class">
      <ToldForm action={remove} className="mt-2">
        {() => (
          <>
            <input type="hidden" name="class" value={group.id} />
            <ul>
              {group.tutors.map((tutor) => (
                <li
                  key={tutor.id}
                  className="flex min-h-14 flex-wrap items-center justify-between gap-3 border-t border-line py-1 first:border-0"
                >
                  <span className="wrap-anywhere">{tutor.name}</span>
                  {isOpen && group.tutors.length > 1 && (
                    <Button
                      type="submit"
                      look="quiet"
                      name="tutor"
                      value={tutor.id}
                      aria-label={`Take ${tutor.name} out of the tutors`}
                    >
                      Take out
                    </Button>
                  )}
                </li>
              ))}
            </ul>
          </>
        )}
      </ToldForm>
      {isOpen &&
        (others.length === 0 ? (
          <p className="mt-2 text-sm text-ink-2">Every tutor of the workshop is one. More are added on the desk.</p>
        ) : (
          <ToldForm action={add}>
            {() => (
              <>
                <input type="hidden" name="class" value={group.id} />
                <label htmlFor={id} className="block text-sm font-medium">
                  Another tutor
                </label>
                <div className="flex flex-wrap gap-3">
                  <select
                    id={id}
                    name="tutor"
                    className="h-11 min-w-48 flex-1 rounded border border-ink-2 bg-white px-3"
                  >
                    {others.map((tutor) => (
                      <option key={tutor.id} value={tutor.id}>
                        {tutor.name}
                      </option>
                    ))}
                  </select>
                  <Button type="submit" look="quiet">
                    Add
                  </Button>
                </div>
                <p className="text-sm text-ink-2">They can do with this class everything that you can.</p>
              </>
            )}
          </ToldForm>
        ))}
    </Sheet>
  );
}
