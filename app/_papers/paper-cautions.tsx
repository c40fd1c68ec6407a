import { Caution } from "@/app/_ui/caution";
import { CAUTION } from "@/lib/criteria";

/** Stands under every paper: what its marks are worth, and what its criteria. */
export function PaperCautions() {
  return (
    <div>
      <Caution />
      <p className="mt-3 max-w-3xl text-ink-2 text-sm">Criteria: {CAUTION}</p>
    </div>
  );
}
