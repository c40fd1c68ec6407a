import { Notice } from "./notice";

interface LeftBehindProps {
  /** What was not done with it: "stored", "saved". */
  readonly notDone: string;
  readonly onTakeUp: () => void;
  readonly onDrop: () => void;
}

const BUTTON = "min-h-11 cursor-pointer px-2 font-semibold text-action underline";

/** Offers what an earlier visit wrote and did not store; see useKeptDraft. */
export function LeftBehind({ notDone, onTakeUp, onDrop }: LeftBehindProps) {
  return (
    <Notice isGood>
      What you wrote here before was not {notDone}. It is kept in this window.{" "}
      <button type="button" className={BUTTON} onClick={onTakeUp}>
        Take it up again
      </button>
      <button type="button" className={BUTTON} onClick={onDrop}>
        Drop it
      </button>
    </Notice>
  );
}
