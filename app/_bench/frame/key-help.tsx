"use client";
import { useEffect, useRef } from "react";
import type { JointKind } from "@/lib/weld";

type Row = readonly [keys: string, does: string];
/** What stands only in the list of one kind of piece. */
const ONLY: Readonly<Record<JointKind, Readonly<Record<string, readonly Row[]>>>> = {
  butt: {
    view: [["F", "turn the plate over"]],
    gauges: [
      ["1 to 6", "rule, height, depth, hook gauge, comb, caliper: take it to the cursor"],
      ["X", "feet on both sides, on one side"],
      ["J  K", "nearest foot or sole closer, further"],
      [",  .", "feet closer together, further apart"],
    ],
  },
  fillet: {
    view: [
      ["F", "turn it: into the corner, square on the base plate, square on the standing plate"],
      ["T", "the ends of the joint, and the feeler"],
    ],
    gauges: [
      ["1 to 4", "into the corner: rule, fillet gauge, blades, comb; square on a plate: rule, depth gauge, comb"],
      ["X", "from one leg to the other and to the throat; of the depth gauge, feet on both sides, on one side"],
      ["J  K", "a smaller blade, a larger one; nearest foot closer, further"],
    ],
  },
};

interface KeysFor {
  readonly kind: JointKind;
  readonly hasLens: boolean;
  /** Whether a clock goes. */
  readonly isTimed: boolean;
}

const keysOf = ({ kind, hasLens, isTimed }: KeysFor): readonly (readonly [heading: string, rows: readonly Row[]])[] => [
  [
    "Cursor and view (on the plate)",
    [
      ["Arrows", "move the cursor 1 mm; with Shift 10 mm, with Alt 0.1 mm"],
      ["Ctrl + arrows", "move the plate"],
      ["+  −  0", "closer, further away, the whole plate"],
      ["Z", "full detail at the cursor"],
      ...ONLY[kind].view,
      ...(hasLens ? [["L", "hold the lens, put it down"] as const] : []),
    ],
  ],
  [
    "Torch",
    [
      ["A  D", "carry it 45 degrees round, against or with the clock"],
      ["W  S", "lift it, lower it: low, middle, high"],
    ],
  ],
  [
    "Writing",
    [
      ["I", "an indication begins here; again: it ends here"],
      ["P", "a point indication here"],
      ["Esc", "leave off drawing; from the report back to the plate"],
      ["R", "to the report"],
      ["C", "the criteria"],
      ["N  B", "next row, row before"],
      ["Delete", "delete the open row"],
      ["Ctrl + Z, Ctrl + Y", "undo, redo"],
    ],
  ],
  [
    "Questions (on the clipboard, once the report is closed)",
    [
      ["1 to 4", "answer A to D"],
      ["Left, right", "the question before, the next one"],
      ["R", "from the plate to the questions"],
    ],
  ],
  [
    "Gauges",
    [
      ["G", "the gauge tray"],
      ...ONLY[kind].gauges,
      ["Arrows", "move it with the cursor"],
      ["Q  E", "turn it by 15 degrees; with Shift by 1"],
      ["O", "to its moving part: down and up slide it 0.2 mm, with Shift 2, with Alt 0.02; End pushes it home"],
      ["H", "put it away"],
    ],
  ],
  [
    "Tools",
    [
      ["V  M  G", "move the plate, mark, gauges"],
      ...(isTimed ? [["U", "how much time is left, wherever you are but while typing"] as const] : []),
      ["?", "this list"],
    ],
  ],
];

export function KeyHelp({ onClose, ...keys }: KeysFor & { readonly onClose: () => void }) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (!dialog.current?.open) dialog.current?.showModal();
  }, []);
  return (
    <dialog
      ref={dialog}
      aria-labelledby="keys-title"
      onClose={onClose}
      className="m-auto max-h-[92dvh] w-[min(56rem,94vw)] overflow-y-auto rounded-lg bg-sheet px-5 pb-5 text-ink shadow-2xl backdrop:bg-[#000a]"
    >
      {/* the way out stays in sight, and with the focus on it the arrow keys scroll the list */}
      <div className="sticky top-0 mb-3 flex flex-wrap items-center justify-between gap-3 border-line border-b bg-sheet py-3">
        <h2 id="keys-title" className="font-semibold text-xl">
          What the keys do
        </h2>
        <button
          type="button"
          className="h-11 rounded bg-action px-5 font-semibold text-sheet"
          onClick={() => dialog.current?.close()}
        >
          Back to the bench
        </button>
      </div>
      <div className="gap-x-8 sm:columns-2">
        {keysOf(keys).map(([heading, rows]) => (
          <section key={heading} className="mb-4 break-inside-avoid">
            <h3 className="font-semibold text-ink-2 text-sm">{heading}</h3>
            <dl className="text-sm">
              {rows.map(([keys, does]) => (
                <div key={keys} className="flex gap-3 border-line border-b py-1">
                  <dt className="w-32 shrink-0 font-medium">{keys}</dt>
                  <dd>{does}</dd>
                </div>
              ))}
            </dl>
          </section>
        ))}
      </div>
      <p className="mt-4 max-w-3xl text-ink-2 text-sm">
        The bench notes which parts of the weld you have in sight, how close and under which light. The mark sheet shows
        it to you and your tutor. It gives no marks and changes none.
      </p>
    </dialog>
  );
}
