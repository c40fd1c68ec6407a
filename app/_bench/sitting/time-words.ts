const SECOND = 1000;
const MINUTE = 60 * SECOND;

/** From here on the strip counts seconds. */
const SECONDS_BELOW = 10 * MINUTE;

/** At what time left it is spoken, minutes. */
const SPOKEN_MINUTES = [10, 5, 1] as const;

const plural = (count: number, word: string) => `${count} ${word}${count === 1 ? "" : "s"}`;

/** What the strip above the bench shows: whole minutes, the last ten of them with seconds. */
export function shortLeft(ms: number): string {
  if (ms > SECONDS_BELOW) return `${Math.ceil(ms / MINUTE)} min left`;
  const seconds = Math.ceil(Math.max(0, ms) / SECOND);
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")} left`;
}

/** What is left in words, to the second where that matters: "1 hour 43 minutes", "4 minutes 10 seconds". */
export function exactLeft(ms: number): string {
  const seconds = Math.ceil(Math.max(0, ms) / SECOND);
  const hours = Math.floor(seconds / 3600);
  const minutes = Math.floor((seconds % 3600) / 60);
  const rest = seconds % 60;
  const parts = [
    ...(hours > 0 ? [plural(hours, "hour")] : []),
    ...(minutes > 0 ? [plural(minutes, "minute")] : []),
    ...(hours === 0 && (rest > 0 || minutes === 0) ? [plural(rest, "second")] : []),
  ];
  return parts.join(" ");
}

/** The mark that was passed while the time left went from `before` to `after`, in words; null where none was. */
export function passedMark(before: number, after: number): string | null {
  const passed = SPOKEN_MINUTES.filter(
    (minutes) => before > minutes * MINUTE && after <= minutes * MINUTE && after > 0,
  );
  const last = passed.at(-1);
  return last === undefined ? null : `${plural(last, "minute")} left.`;
}

/** What to say when the time that the clock gives has become another one; null where it is the same. */
export function changedTime(before: number | null, after: number | null, left: number): string | null {
  if (before === null || after === null || before === after) return null;
  const minutes = Math.round(Math.abs(after - before) / MINUTE);
  const by = minutes > 0 ? plural(minutes, "minute") : plural(Math.round(Math.abs(after - before) / SECOND), "second");
  return after > before
    ? `Your tutor gave you ${by} more. You have ${exactLeft(left)} left.`
    : `Your tutor changed your time: ${by} less. You have ${exactLeft(left)} left.`;
}
