import type { Criteria } from "@/lib/criteria";
import { type LimitsView, offeredSets } from "./limits-view";
import { shortName } from "./limits-words";

interface SetChoiceProps {
  readonly view: LimitsView;
  readonly inHouse: readonly Criteria[];
  readonly onChange: (view: LimitsView) => void;
}

/** Which sets are compared, the workshop's own last; one of them always stays. */
export function SetChoice({ view, inHouse, onChange }: SetChoiceProps) {
  const offered = offeredSets(view.stress, inHouse);
  const isOwn = (criteria: Criteria) => inHouse.includes(criteria);
  const choose = (key: string, isOn: boolean) => {
    const sets = offered.map((set) => set.key).filter((one) => (one === key ? isOn : view.sets.includes(one)));
    if (sets.length > 0) onChange({ ...view, sets });
  };
  return (
    <div className="mt-2 grid gap-x-6 sm:grid-cols-2 lg:grid-cols-4">
      {offered.map(({ key, criteria }) => (
        <label key={key} className="flex min-h-11 cursor-pointer items-center gap-3 text-sm">
          <input
            type="checkbox"
            checked={view.sets.includes(key)}
            onChange={(event) => choose(key, event.target.checked)}
            className="h-11 w-5 shrink-0 cursor-pointer accent-action"
          />
          <span className="wrap-anywhere">
            {shortName(criteria)}
            {isOwn(criteria) && <span className="text-ink-2">, in-house</span>}
          </span>
        </label>
      ))}
    </div>
  );
}
