/**
 * What is known about the safety of the report. Every edit takes the next sequence number; the server answers with the
 * number it has. The caller does the sending and tells what came of it.
 */
export interface Saving {
  /** Number of the newest edit. */
  readonly newest: number;
  /** Newest number that the server has confirmed. */
  readonly confirmed: number;
  readonly isSending: boolean;
  /** Failed tries since the last success. */
  readonly failures: number;
  /** When the server last kept a version, as it said; null before the first time. */
  readonly savedAt: string | null;
  /** Why the server refused, in words: sending the same again would not help. A lasting one no edit can mend. */
  readonly refusal: { readonly reason: string; readonly isLasting: boolean } | null;
}

export type SavingEvent =
  | { readonly kind: "edited"; readonly sequence: number }
  /** Goes on from a version that the server has, after a refusal. */
  | { readonly kind: "restarted"; readonly sequence: number }
  | { readonly kind: "sending" }
  | { readonly kind: "confirmed"; readonly sequence: number; readonly savedAt: string }
  | { readonly kind: "failed" }
  /** It came after a newer version of this window, and so is of no more use. */
  | { readonly kind: "overtaken" }
  /** What stood in the way is gone: worth a try at once. */
  | { readonly kind: "way-is-free" }
  | { readonly kind: "refused"; readonly reason: string; readonly isLasting: boolean };

/** Starts from what the server has and what this browser kept: a higher number here is still to be sent. */
export const startSaving = (server: number, kept: number, savedAt: string | null = null): Saving => ({
  newest: Math.max(server, kept),
  confirmed: server,
  isSending: false,
  failures: 0,
  savedAt,
  refusal: null,
});

/** The saving state after an event. A late confirmation never takes back a newer one. */
export function save(state: Saving, event: SavingEvent): Saving {
  switch (event.kind) {
    case "edited":
      return { ...state, newest: event.sequence, refusal: state.refusal?.isLasting ? state.refusal : null };
    case "restarted":
      return { ...state, newest: event.sequence, confirmed: event.sequence, failures: 0, refusal: null };
    case "sending":
      return { ...state, isSending: true };
    case "confirmed":
      return {
        ...state,
        isSending: false,
        failures: 0,
        refusal: null,
        confirmed: Math.max(state.confirmed, event.sequence),
        savedAt: event.savedAt,
      };
    case "failed":
      return { ...state, isSending: false, failures: state.failures + 1 };
    case "overtaken":
      return { ...state, isSending: false };
    case "way-is-free":
      return { ...state, failures: 0, refusal: null };
    case "refused":
      return { ...state, isSending: false, refusal: { reason: event.reason, isLasting: event.isLasting } };
  }
}

export const isUnsent = (state: Saving): boolean => state.newest > state.confirmed;

/** Rest after the last edit before it is sent, and the waits between tries, ms. */
const REST_MS = 800;
const WAITS_MS = [2_000, 5_000, 10_000, 20_000, 30_000] as const;

/** How long to wait before sending, ms; null when there is nothing to send or sending is of no use. */
export function waitBeforeSending(state: Saving): number | null {
  if (!isUnsent(state) || state.isSending || state.refusal !== null) return null;
  if (state.failures === 0) return REST_MS;
  return WAITS_MS[Math.min(state.failures, WAITS_MS.length) - 1];
}
