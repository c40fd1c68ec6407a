const DAY_MS = 24 * 60 * 60_000;

/** Noon or any other time, like "14:30", so many working days before a day, or after it where that is negative; UTC. */
export function workday(day: Date, before: number, time: string): Date {
  const [hours, minutes] = time.split(":").map(Number);
  const date = new Date(Date.UTC(day.getUTCFullYear(), day.getUTCMonth(), day.getUTCDate(), hours, minutes));
  const step = before < 0 ? 1 : -1;
  for (let left = Math.abs(before); left > 0; ) {
    date.setTime(date.getTime() + step * DAY_MS);
    if (date.getUTCDay() !== 0 && date.getUTCDay() !== 6) left--;
  }
  return date;
}

export const minutesAfter = (from: Date, minutes: number): Date =>
  new Date(from.getTime() + Math.round(minutes * 60) * 1000);

export const daysBetween = (from: Date, to: Date): number => (to.getTime() - from.getTime()) / DAY_MS;
