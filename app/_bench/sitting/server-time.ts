/** What a browser knows of the server's time, by a clock of its own that nobody can set (`performance.now()`). */
export interface ServerTime {
  /** Server's time less the browser's, ms. */
  readonly offset: number;
  /** By how much it may be off at most, ms: half of what the request took. */
  readonly uncertainty: number;
}

/**
 * From a request that was sent and answered at these times of the browser, with the server's time in the answer: that was at
 * some moment in between, so the middle is off by half of it at most.
 */
export const timeFrom = (sentAt: number, answeredAt: number, serverNow: number): ServerTime => ({
  offset: serverNow - (sentAt + answeredAt) / 2,
  uncertainty: (answeredAt - sentAt) / 2,
});

/** Browsers let clocks drift, and stop them while a machine sleeps. */
const DRIFT_MS = 500;

/**
 * What to go by once another measure has come: the surer one, unless both cannot be true, since then the browser's clock has
 * stood still meanwhile.
 */
export function refined(known: ServerTime | null, measured: ServerTime): ServerTime {
  if (known === null || measured.uncertainty <= known.uncertainty) return measured;
  const isPossible = Math.abs(known.offset - measured.offset) <= known.uncertainty + measured.uncertainty + DRIFT_MS;
  return isPossible ? known : measured;
}

/** Whether a time that the server sent by itself, and that may have been under way for a while, tells that ours is wrong. */
export function contradicts({ offset, uncertainty }: ServerTime, serverNow: number, arrivedAt: number): boolean {
  const under = arrivedAt + offset - serverNow;
  // it cannot be older than sent, and rarely takes as long as this
  return under < -(uncertainty + DRIFT_MS) || under > uncertainty + 2 * DRIFT_MS;
}
