/** A time in which the clock stands; `to` is null while it lasts. */
export interface Pause {
  readonly from: Date;
  readonly to: Date | null;
}

interface Stretch {
  /** Epoch ms. */
  readonly from: number;
  readonly to: number;
}

/** When the clock stood between two moments: in order, apart from each other, each moment once however many pauses hold it. */
export function stoppedStretches(pauses: readonly Pause[], since: number, until: number): readonly Stretch[] {
  const clipped = pauses
    .map(({ from, to }) => ({
      from: Math.max(since, from.getTime()),
      to: Math.min(until, to?.getTime() ?? until),
    }))
    .filter(({ from, to }) => from < to)
    .sort((a, b) => a.from - b.from);
  const apart: Stretch[] = [];
  for (const stretch of clipped) {
    const last = apart.at(-1);
    if (last && stretch.from <= last.to) apart[apart.length - 1] = { ...last, to: Math.max(last.to, stretch.to) };
    else apart.push(stretch);
  }
  return apart;
}

/** How long the clock went between two moments, ms. */
export function goingTime(pauses: readonly Pause[], since: number, until: number): number {
  const stopped = stoppedStretches(pauses, since, until).reduce((sum, { from, to }) => sum + to - from, 0);
  return Math.max(0, until - since) - stopped;
}

/** Pauses with the one that lasts ended. */
export const endPause = (pauses: readonly Pause[], at: Date): readonly Pause[] =>
  pauses.map((pause) => (pause.to === null ? { ...pause, to: at } : pause));

/** Since when the clock stands; null while it goes. */
export function standingSince(pauses: readonly Pause[]): Date | null {
  const open = pauses.filter(({ to }) => to === null).map(({ from }) => from.getTime());
  return open.length === 0 ? null : new Date(Math.min(...open));
}
