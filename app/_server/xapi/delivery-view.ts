/** How sending to the record store goes, for tutors; it says of nobody what is told. */
export interface DeliveryView {
  /** Where to; null where none is configured. */
  readonly host: string | null;
  /** Why what is configured cannot be used. */
  readonly problem: string | null;
  readonly waiting: number;
  readonly waitingSince: Date | null;
  /** Why statements were refused, and how many for each reason. */
  readonly refused: readonly { readonly reason: string; readonly count: number }[];
  readonly sent: number;
  readonly lastSuccessAt: Date | null;
  readonly lastErrorAt: Date | null;
  readonly lastError: string | null;
  /** Tries in a row that failed. */
  readonly failures: number;
  readonly nextTryAt: Date | null;
}
