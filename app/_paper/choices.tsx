import { type ReactNode, useId } from "react";

interface ChoicesProps {
  readonly name: string;
  /** What they have in common, in a sentence or two. */
  readonly note: ReactNode;
  readonly children: ReactNode;
}

/** A button that opens a short list of links; the browser closes it on Escape and on a tap beside it. */
export function Choices({ name, note, children }: ChoicesProps) {
  const id = useId();
  return (
    <>
      <button
        type="button"
        popoverTarget={id}
        className="inline-flex min-h-11 cursor-pointer items-center rounded border border-ink-2 bg-sheet px-5 font-medium hover:bg-paper-2"
      >
        {name}
      </button>
      <section
        id={id}
        popover="auto"
        aria-label={name}
        className="m-auto w-96 max-w-[calc(100vw-2rem)] rounded-md border border-ink-2 bg-sheet p-4 text-ink shadow-xl backdrop:bg-black/30"
      >
        <p className="text-lg font-semibold">{name}</p>
        <ul className="mt-2">{children}</ul>
        <p className="mt-2 text-sm text-ink-2">{note}</p>
        <button
          type="button"
          popoverTarget={id}
          popoverTargetAction="hide"
          className="mt-3 min-h-11 cursor-pointer rounded border border-ink-2 px-5 font-medium hover:bg-paper-2"
        >
          Close
        </button>
      </section>
    </>
  );
}

interface ChoiceProps {
  readonly href: string;
  readonly isFile?: boolean;
  readonly children: ReactNode;
}

/** One link of the list, as high as a finger; a file is kept instead of being opened. */
export function Choice({ href, isFile = false, children }: ChoiceProps) {
  return (
    <li className="border-t border-line first:border-0">
      <a
        href={href}
        download={isFile}
        className="flex min-h-11 items-center rounded font-medium text-action underline underline-offset-4"
      >
        {children}
      </a>
    </li>
  );
}
