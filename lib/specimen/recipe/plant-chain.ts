import type { RandomStream } from "../../random";
import { CHAINS, type Chain } from "./chains";
import { isGapWide, isStepped } from "./joint-effects";
import { type Candidate, openCandidates } from "./pick-rows";
import { type Asked, type Drawing, type Planted, placeRow, type Wish } from "./place-row";
import { matchUnits } from "./slot-match";

/** One indication still to be planted, and what can fill it. */
export interface OpenUnit {
  readonly slot: number;
  readonly candidates: readonly Candidate[];
}

function isPossible({ face, processes, positions, joint }: Chain, asked: Asked): boolean {
  if (face !== asked.face) return false;
  if (processes && !processes.includes(asked.joint.process)) return false;
  if (positions && !positions.includes(asked.joint.position)) return false;
  switch (joint) {
    case "wide-gap":
      return isGapWide(asked);
    case "stepped":
      return isStepped(asked);
    case undefined:
      return true;
  }
}

/** Plants at most one fault chain on an empty face, where the slots have room for all of it; answers what is still open. */
export function plantChain(drawing: Drawing, open: readonly OpenUnit[], random: RandomStream): readonly OpenUnit[] {
  for (const chain of CHAINS) {
    if (!isPossible(chain, drawing.asked)) continue;
    const own = random.child(chain.name);
    if (!own.chance(chain.share)) continue;
    const taken = plant(drawing, open, chain, own);
    if (taken) return open.filter((unit) => !taken.includes(unit));
    drawing.planted.length = 0;
    drawing.stops.forEach((_, run) => {
      drawing.stops[run] = [...drawing.asked.layout.runs[run].stops];
    });
  }
  return open;
}

function plant(drawing: Drawing, open: readonly OpenUnit[], chain: Chain, random: RandomStream): OpenUnit[] | null {
  const types = [chain.first, ...chain.followers.map(({ type }) => type)];
  const shuffled = shuffle(open, random);
  const matching = matchUnits(types.length, shuffled.length, (member, unit) =>
    shuffled[unit].candidates.some(({ row }) => row.type === types[member]),
  );
  if (matching.size < types.length) return null;
  const units = types.map((_, member) => {
    const found = [...matching].find(([, filled]) => filled === member);
    if (!found) throw new Error(`no unit for member ${member}`);
    return shuffled[found[0]];
  });
  for (const [member, unit] of units.entries()) {
    const ofType = openCandidates(
      unit.candidates,
      drawing.planted.map(({ row }) => row),
    ).filter(({ row }) => row.type === types[member]);
    if (ofType.length === 0) return null;
    const { row, sizings } = random.pick(ofType);
    const wish = member === 0 ? undefined : wishAfter(drawing, chain, member, random);
    if (!placeRow(drawing, row, random.pick(sizings), random, wish)) return null;
  }
  return units;
}

/** Within its distance after what came before, onwards in the welding direction or on whichever side. */
function wishAfter({ asked, planted }: Drawing, chain: Chain, member: number, random: RandomStream): Wish {
  const { after, onwards } = chain.followers[member - 1];
  const before: Planted = planted[planted.length - 1];
  const direction = onwards ? asked.layout.direction : random.pick([-1, 1] as const);
  const { x, length } = before.place;
  return direction > 0
    ? { end: "start", within: [x + length + after[0], x + length + after[1]] }
    : { end: "end", within: [x - after[1], x - after[0]] };
}

function shuffle<T>(items: readonly T[], random: RandomStream): T[] {
  const left = [...items];
  return items.map(() => left.splice(random.integer(left.length), 1)[0]);
}
