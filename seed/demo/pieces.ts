import type { PaperPiece } from "@/lib/sittings";
import type { JointKind } from "@/lib/weld";
import { DEMO_PAPERS } from "./papers";

/** A piece of the demo's past, always the same one. */
interface DemoPiece {
  readonly key: string;
  readonly kind: JointKind;
  /** What a paper fixes of it; null for practice. */
  readonly asked: PaperPiece | null;
}

/** Where pieces are made: by whoever makes them for everybody, but from a seed that is given. */
export interface PieceMaker {
  /** Orders a piece with that seed, once. */
  orderNamed(kind: JointKind, asked: PaperPiece | null, seed: string): Promise<{ readonly specimenId: string }>;
  stageOf(specimenId: string): Promise<{ readonly state: string }>;
}

/** The one name that everything drawn for the demo comes from. */
export const DEMO_SEED = "tidewater";

const PLATES = ["p1", "p2", "p3", "p4", "p5", "p6"] as const;
const FILLETS = ["f1", "f2", "f3", "f4"] as const;
/** What is practised on: many learners have the same piece, each by themselves. */
export const PRACTISED = { butt: PLATES, fillet: FILLETS } as const;

const asked = (paper: "both" | "short" | "house", section: "plate" | "fillet"): PaperPiece => {
  const { sections } = DEMO_PAPERS[paper]("none");
  const found = sections.find((one) => one.section === section);
  if (!found) throw new Error(`the paper ${paper} has no ${section}`);
  return found.piece;
};

const practised = (kind: JointKind, keys: readonly string[]) => keys.map((key) => ({ key, kind, asked: null }));
const both = (key: string): DemoPiece[] => [
  { key: `${key}-plate`, kind: "butt", asked: asked("both", "plate") },
  { key: `${key}-fillet`, kind: "fillet", asked: asked("both", "fillet") },
];

/** Everything that is made for the past, in the order in which it is needed. */
const DEMO_PIECES: readonly DemoPiece[] = [
  ...practised("butt", PLATES),
  ...practised("fillet", FILLETS),
  ...both("morning-1"),
  ...both("evening-1"),
  ...both("morning-2"),
  ...both("evening-2"),
  ...both("morning-3"),
  { key: "evening-3-fillet", kind: "fillet", asked: asked("short", "fillet") },
  { key: "morning-4-fillet", kind: "fillet", asked: asked("short", "fillet") },
  { key: "evening-4-plate", kind: "butt", asked: asked("house", "plate") },
  { key: "morning-5-plate", kind: "butt", asked: asked("house", "plate") },
];

/** A piece that cannot be made from one seed is made from the next. */
const TRIES = 5;

/** Hands out the pieces of the demo by key, made: one is made ahead while another is waited for. */
export function openPieces(maker: PieceMaker, wait: (ms: number) => Promise<void>): (key: string) => Promise<string> {
  const made = new Map<string, string>();
  const order = ({ key, kind, asked: fixed }: DemoPiece, n: number) =>
    maker.orderNamed(kind, fixed, `${DEMO_SEED}/${key}${n === 0 ? "" : `/${n}`}`);
  const finished = async (piece: DemoPiece): Promise<string> => {
    for (let n = 0; n < TRIES; n++) {
      const { specimenId } = await order(piece, n);
      for (;;) {
        const { state } = await maker.stageOf(specimenId);
        if (state === "taken" || state === "ready") return specimenId;
        if (state === "failed") break;
        await wait(300);
      }
    }
    throw new Error(`the demo's piece ${piece.key} could not be made`);
  };
  return async (key) => {
    const known = made.get(key);
    if (known !== undefined) return known;
    const at = DEMO_PIECES.findIndex((piece) => piece.key === key);
    if (at < 0) throw new Error(`the demo has no piece ${key}`);
    const next = DEMO_PIECES[at + 1];
    const isAhead = next && !made.has(next.key);
    const [specimenId] = await Promise.all([finished(DEMO_PIECES[at]), isAhead && order(next, 0)]);
    made.set(key, specimenId);
    return specimenId;
  };
}
