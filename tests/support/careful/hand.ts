import type { Place } from "../../../lib/bench";
import { type GaugePlacement, type Heights, readRule, setDown } from "../../../lib/gauges";
import type { RandomStream } from "../../../lib/random";

export const middleOf = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
};
export const meanOf = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0) / values.length;
export const stepsFrom = (from: number, to: number, step: number): number[] =>
  Array.from({ length: Math.max(0, Math.floor((to - from) / step + 1e-9) + 1) }, (_, n) => from + n * step);
export const tenth = (value: number): number => Math.round(value * 10) / 10;

/** How well a placement that is aimed at comes off: mm along, mm across, degrees. Common practice, no source. */
const AIM = { along: 0.3, across: 0.1, turn: 1 };

export interface Found {
  readonly value: number;
  readonly at: GaugePlacement;
}

/** Somebody with gauges at one face: sets them down with an unsteady hand and reads them to their own step. */
export class Hand {
  readonly heights: Heights;
  private readonly aim: RandomStream;
  private readonly seating: RandomStream;

  constructor(heights: Heights, random: RandomStream) {
    this.heights = heights;
    this.aim = random.child("aim");
    this.seating = random.child("seating");
  }

  /** The same hand on other heights of the same piece, such as one plate of a fillet. */
  on(heights: Heights): Hand {
    return Object.assign(Object.create(Hand.prototype), this, { heights });
  }

  /** One reading; NaN where the gauge cannot be read. */
  once(wanted: GaugePlacement): number {
    const { aim } = this;
    const placement = {
      ...wanted,
      x: wanted.x + aim.normal(0, AIM.along),
      y: wanted.y + aim.normal(0, AIM.across),
      turn: wanted.turn + aim.normal(0, AIM.turn),
    };
    const standing = setDown(this.heights, placement, this.seating);
    return standing.ok ? standing.reading : Number.NaN;
  }

  /** The middle one of several readings; NaN where most cannot be read. */
  settled(wanted: GaugePlacement, times = 5): number {
    const read = Array.from({ length: times }, () => this.once(wanted)).filter((one) => !Number.isNaN(one));
    return 2 * read.length > times ? middleOf(read) : Number.NaN;
  }

  /** Of many places the one where most is read (or least): each is tried once, and the best few are read several times. */
  furthest(places: readonly GaugePlacement[], which: "most" | "least", few: number): Found {
    const sign = which === "most" ? 1 : -1;
    const better = (a: Found, b: Found) => sign * (b.value - a.value);
    const isRead = ({ value }: Found) => !Number.isNaN(value);
    const tried = places.map((at): Found => ({ at, value: this.once(at) })).filter(isRead);
    const best = tried.sort(better).slice(0, few);
    const read = best.map(({ at }): Found => ({ at, value: this.settled(at) })).filter(isRead);
    return read.sort(better)[0] ?? { value: Number.NaN, at: places[0] };
  }

  /** A distance by the rule: the mean of several layings, since it is read to half a millimetre by eye. */
  rule(from: Place, to: Place, times = 5): number {
    const turn = (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;
    const [cos, sin] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
    return meanOf(
      Array.from({ length: times }, () => {
        const back = this.aim.uniform(5, 15);
        const spot = { x: from.x - back * cos, y: from.y - back * sin, turn };
        const [near, far] = [from, to].map((place) => {
          const read = readRule(this.heights, spot, place, this.seating);
          if (!read.ok) throw new Error(`the rule: ${read.code}`);
          return read.reading;
        });
        return far - near;
      }),
    );
  }

  /** A place along or across, read off a rule by eye to half a millimetre (`GAUGES["steel-rule"]`). */
  place(at: number, low: number, high: number): number {
    return Math.min(high, Math.max(low, Math.round(2 * this.aim.normal(at, 0.3)) / 2));
  }
}
