/** How sending to the record store goes, for tutors; it says of nobody what is told. */
export interface DeliveryView {
  /** Where to; null where none is configured. */
  readonly host: string | null;
  /** Whether nothing is told at all: the people of the demo workshop are nobody. */
  readonly isDemo: boolean;
  /** Why what is configured cannot be used. */
  readonly problem: string | null;
  readonly waiting: number;
  readonly waitingSince: Date | null;
  /** How many were refused with each status of HTTP, and one or two of the reasons that were given. */
  readonly refused: readonly {
    readonly status: string;
    readonly count: number;
    readonly reasons: readonly string[];
  }[];
  readonly sent: number;
  readonly lastSuccessAt: Date | null;
  readonly lastErrorAt: Date | null;
  readonly lastError: string | null;
  /** Tries in a row that failed. */
  readonly failures: number;
  readonly nextTryAt: Date | null;
}
