/**
 * How urgent a job is: a learner, or whoever sits something, waits for it; a tutor has a look at what could be made; nobody waits for
 * it yet.
 */
export const URGENCIES = ["awaited", "look", "ahead"] as const;
export type Urgency = (typeof URGENCIES)[number];

/** Jobs that wait for a thread: the most urgent first, each in the order in which they came. */
export interface WaitingLine<Job> {
  /** Jobs of one thing have one name, by which they are hurried. Returned is what takes the job out again; false where it has gone. */
  add(job: Job, urgency: Urgency, name?: string): () => boolean;
  /** Somebody has come who waits for the thing of this name. */
  hurry(name: string): void;
  /**
   * The next one, taken out of the line. What no learner waits for goes only while no other job is at work: so one thread is left for
   * whoever comes to wait, and a learner's own browser on the same machine is not starved.
   */
  next(isAnyAtWork: boolean): Job | null;
}

interface Place<Job> {
  readonly job: Job;
  readonly name: string | undefined;
}

export function openLine<Job>(): WaitingLine<Job> {
  const lines: Record<Urgency, Place<Job>[]> = { awaited: [], look: [], ahead: [] };
  return {
    add(job, urgency, name) {
      const place = { job, name };
      lines[urgency].push(place);
      return () => {
        const line = URGENCIES.map((one) => lines[one]).find((one) => one.includes(place));
        line?.splice(line.indexOf(place), 1);
        return line !== undefined;
      };
    },
    hurry(name) {
      for (const urgency of ["look", "ahead"] as const) {
        const hurried = lines[urgency].filter((place) => place.name === name);
        lines[urgency] = lines[urgency].filter((place) => place.name !== name);
        lines.awaited.push(...hurried);
      }
    },
    next(isAnyAtWork) {
      const open = isAnyAtWork ? [lines.awaited] : URGENCIES.map((urgency) => lines[urgency]);
      return open.find((line) => line.length > 0)?.shift()?.job ?? null;
    },
  };
}
