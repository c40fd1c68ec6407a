import { useCallback, useEffect, useRef, useState } from "react";
import { type Board, liveBoardSchema, refusedSchema, timeSchema } from "./board";

/**
 * How the board comes in: "live" as it changes; "asking" every few seconds, since the live line is down; "cut" when the
 * server is not reached; "refused" for good, such as after signing out.
 */
export type Line =
  | { readonly state: "live" | "asking" }
  | { readonly state: "cut"; readonly heardAt: Date }
  | { readonly state: "refused"; readonly message: string };

export interface LiveBoard {
  readonly board: Board;
  /** The server's clock less this machine's, ms. */
  readonly offset: number;
  readonly line: Line;
  /** Asks for the board at once, as after an act. */
  readonly refresh: () => Promise<void>;
}

/** The server says something every ten seconds at least; after so long without a word the line counts as down, ms. */
const SILENCE_MS = 25_000;
/** A line that breaks comes back within this, when nothing is wrong; only then it is called down, ms. */
const BREAK_MS = 4_000;
const ASK_EVERY_MS = 4_000;
/** A browser gives up on an answer that is no stream; then it is tried again after this, ms. */
const TRY_AGAIN_MS = 8_000;

/** The board of a sitting as it changes: from the live line, and by asking while that is down. */
export function useLiveBoard(initial: Board, now: Date): LiveBoard {
  const { id } = initial.sitting;
  const [board, setBoard] = useState(initial);
  const [offset, setOffset] = useState(0);
  const [line, setLine] = useState<Line>({ state: "live" });
  const heardAt = useRef(now.getTime());
  const newest = useRef(now.getTime());

  /** Takes a board unless a newer one came another way meanwhile. */
  const take = useCallback((data: unknown) => {
    const { now, ...read } = liveBoardSchema.parse(data);
    setOffset(now.getTime() - Date.now());
    heardAt.current = Date.now();
    if (now.getTime() < newest.current) return;
    newest.current = now.getTime();
    setBoard(read);
  }, []);

  const refresh = useCallback(async () => {
    const response = await fetch(`/api/sittings/${id}`, { cache: "no-store" });
    const body: unknown = await response.json();
    const refused = refusedSchema.safeParse(body);
    if (refused.success) setLine({ state: "refused", message: refused.data.message });
    else take(body);
  }, [id, take]);

  useEffect(() => {
    let source: EventSource | null = null;
    let isOver = false;
    let isDown = false;
    let isRefused = false;
    let brokeAt: number | null = null;
    let again: ReturnType<typeof setTimeout> | undefined;
    heardAt.current = Date.now();

    const isUp = () => {
      brokeAt = null;
      isDown = false;
      heardAt.current = Date.now();
      setLine((before) => (before.state === "live" ? before : { state: "live" }));
    };
    const connect = () => {
      source?.close();
      source = new EventSource(`/api/sittings/${id}/live`);
      source.addEventListener("board", (event) => {
        take(JSON.parse(event.data));
        isUp();
      });
      source.addEventListener("time", (event) => {
        const { now } = timeSchema.parse(JSON.parse(event.data));
        setOffset(now.getTime() - Date.now());
        isUp();
      });
      source.addEventListener("refused", () => {
        isRefused = true;
        source?.close();
        void ask();
      });
      source.onerror = () => {
        brokeAt ??= Date.now();
        if (source?.readyState !== EventSource.CLOSED || isRefused || isOver) return;
        clearTimeout(again);
        again = setTimeout(connect, TRY_AGAIN_MS);
      };
    };
    const ask = async () => {
      try {
        await refresh();
        if (!isOver) setLine((before) => (before.state === "refused" ? before : { state: "asking" }));
      } catch {
        if (!isOver) setLine({ state: "cut", heardAt: new Date(heardAt.current) });
      }
    };
    const look = setInterval(() => {
      const isSilent = Date.now() - heardAt.current > SILENCE_MS;
      isDown = isDown || isSilent || (brokeAt !== null && Date.now() - brokeAt > BREAK_MS);
      if (!isDown || isRefused) return;
      // a line that is open and says nothing is dead
      if (isSilent && source?.readyState === EventSource.OPEN) connect();
      void ask();
    }, ASK_EVERY_MS);
    // after sleeping, a tablet looks at once
    const onWake = () => {
      if (document.visibilityState === "visible") void refresh().catch(() => undefined);
    };
    document.addEventListener("visibilitychange", onWake);
    connect();
    return () => {
      isOver = true;
      clearInterval(look);
      clearTimeout(again);
      document.removeEventListener("visibilitychange", onWake);
      source?.close();
    };
  }, [id, refresh, take]);

  return { board, offset, line, refresh };
}
