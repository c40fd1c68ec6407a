"use client";

import { useEffect, useId, useMemo, useRef, useState } from "react";
import { Notice } from "@/app/_ui/notice";
import { Sheet } from "@/app/_ui/sheet";
import { byFamily, FAMILY_NAMES } from "@/lib/bench";
import { COMPARED_WELD, type Criteria, comparedTypes, EXECUTION_CLASSES, en1090, STRESSES } from "@/lib/criteria";
import { type ImperfectionType, imperfection } from "@/lib/imperfections";
import { SURFACE_FACES } from "@/lib/weld";
import type { FieldName } from "./field-facts";
import { LimitsPicture } from "./limits-picture";
import { LimitsTable } from "./limits-table";
import {
  compareView,
  FACE_NAMES,
  fieldsOf,
  type LimitsView,
  type Query,
  readView,
  STRESS_NAMES,
  typeOn,
  writeView,
} from "./limits-view";
import { SetChoice } from "./set-choice";
import { ValueField } from "./value-field";

/** Browsers refuse an address that changes with every step of a slider. */
const ADDRESS_AFTER = 300;

interface LimitsDeskProps {
  readonly query: Query;
  /** The workshop's own criteria, whole. */
  readonly inHouse: readonly Criteria[];
}

/** What is compared on the left, the picture beside it, the table below; the address follows, so that it can be sent on. */
export function LimitsDesk({ query, inHouse }: LimitsDeskProps) {
  const first = useMemo(() => readView(query, inHouse), [query, inHouse]);
  const [view, setView] = useState(first.view);
  const comparison = useMemo(() => compareView(view, inHouse), [view, inHouse]);
  useAddress(view, first.view, inHouse);
  const setNumber = (name: FieldName, value: number) =>
    setView((now) => ({ ...now, numbers: { ...now.numbers, [name]: value } }));
  return (
    <>
      {first.problems.length > 0 && (
        <div className="mt-4 grid max-w-3xl gap-2">
          {first.problems.map((problem) => (
            <Notice key={problem}>In the address: {problem}</Notice>
          ))}
        </div>
      )}
      <div className="mt-4 grid gap-4 lg:grid-cols-[20rem_minmax(0,1fr)]">
        <Sheet title="The imperfection">
          <div className="mt-3 grid gap-3 print:grid-cols-3">
            <Choices view={view} onChange={setView} />
            {fieldsOf(view, inHouse).map((name) => (
              <ValueField
                key={name}
                name={name}
                value={view.numbers[name]}
                onChange={(value) => setNumber(name, value)}
              />
            ))}
          </div>
        </Sheet>
        <Sheet title="How far each standard goes" className="break-inside-avoid">
          <div className="mt-3">
            <LimitsPicture comparison={comparison} />
          </div>
        </Sheet>
      </div>
      <Sheet title="Which stand side by side" className="mt-4 print:hidden">
        <SetChoice view={view} inHouse={inHouse} onChange={setView} />
      </Sheet>
      <Sheet title="What each standard says" className="mt-4">
        <LimitsTable comparison={comparison} />
        <p className="mt-3 max-w-4xl text-ink-2 text-sm">
          The imperfection is taken to lie alone in the middle of a weld of {COMPARED_WELD} mm, with everything on it
          measured; a butt weld has full penetration, so that s is t. The address of this page holds what you have
          chosen: send it on and others see the same.
        </p>
        <p className="mt-2 max-w-4xl text-ink-2 text-sm">
          EN 1090-2 has no bars of its own, since it sends you to levels of ISO 5817.{" "}
          {EXECUTION_CLASSES.map(en1090)
            .map(({ name, notes }) => `${name}: ${notes.charAt(0).toLowerCase()}${notes.slice(1)}`)
            .join(" ")}
        </p>
      </Sheet>
    </>
  );
}

interface ChoicesProps {
  readonly view: LimitsView;
  readonly onChange: (view: LimitsView) => void;
}

const SELECT = "mt-1 h-11 w-full cursor-pointer rounded border border-ink-2 bg-white px-2";

function Choices({ view, onChange }: ChoicesProps) {
  const id = useId();
  return (
    <>
      <div>
        <label htmlFor={`${id}-weld`} className="block font-medium text-sm">
          Weld
        </label>
        <select
          id={`${id}-weld`}
          className={SELECT}
          value={view.face}
          onChange={(event) => {
            const face = SURFACE_FACES.find((one) => one === event.target.value) ?? view.face;
            onChange({ ...view, face, type: typeOn(face, view.type) });
          }}
        >
          {SURFACE_FACES.map((face) => (
            <option key={face} value={face}>
              {FACE_NAMES[face]}
            </option>
          ))}
        </select>
      </div>
      <div>
        <label htmlFor={`${id}-type`} className="block font-medium text-sm">
          Imperfection
        </label>
        <select
          id={`${id}-type`}
          className={SELECT}
          value={view.type}
          onChange={(event) => onChange({ ...view, type: event.target.value as ImperfectionType })}
        >
          {byFamily(comparedTypes(view.face)).map(({ family, types }) => (
            <optgroup key={family} label={FAMILY_NAMES[family]}>
              {types.map((type) => (
                <option key={type} value={type}>
                  {imperfection(type).number} {imperfection(type).name}
                </option>
              ))}
            </optgroup>
          ))}
        </select>
      </div>
      <div>
        <label htmlFor={`${id}-aws`} className="block font-medium text-sm">
          For AWS D1.1 the weld lies
        </label>
        <select
          id={`${id}-aws`}
          className={SELECT}
          value={view.stress}
          onChange={(event) =>
            onChange({ ...view, stress: STRESSES.find((one) => one === event.target.value) ?? view.stress })
          }
        >
          {STRESSES.map((stress) => (
            <option key={stress} value={stress}>
              {STRESS_NAMES[stress]}
            </option>
          ))}
        </select>
      </div>
    </>
  );
}

/** Writes a view into the address once it has been changed and has come to rest. */
function useAddress(view: LimitsView, first: LimitsView, inHouse: readonly Criteria[]): void {
  const isChanged = useRef(false);
  useEffect(() => {
    isChanged.current ||= view !== first;
    if (!isChanged.current) return;
    const later = setTimeout(
      () => window.history.replaceState(null, "", `?${writeView(view, inHouse)}`),
      ADDRESS_AFTER,
    );
    return () => clearTimeout(later);
  }, [view, first, inHouse]);
}
