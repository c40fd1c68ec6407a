import { Button } from "./button";
import { LocalTime } from "./local-time";

interface NewerKeptProps {
  /** Where the newer version is to be seen. */
  readonly href: string;
  /** Of when it is. */
  readonly at: string;
  /** What to look at: "Look at the newer one". */
  readonly look: string;
  readonly inPlace: string;
  readonly asOwn: string;
  readonly onInPlace: () => void;
  readonly onAsOwn: () => void;
}

/** The ways on where somebody else stored a newer version meanwhile: look at it, replace it, or keep both. */
export function NewerKept({ href, at, look, inPlace, asOwn, onInPlace, onAsOwn }: NewerKeptProps) {
  return (
    <div className="flex flex-wrap items-center gap-3">
      <a
        href={href}
        target="_blank"
        rel="noreferrer"
        className="inline-flex min-h-11 items-center font-medium text-action underline underline-offset-4"
      >
        {look}, of{" "}
        <span className="mx-1">
          <LocalTime at={new Date(at)} />
        </span>{" "}
        (new window)
      </a>
      <Button look="quiet" onClick={onInPlace}>
        {inPlace}
      </Button>
      <Button look="quiet" onClick={onAsOwn}>
        {asOwn}
      </Button>
    </div>
  );
}
