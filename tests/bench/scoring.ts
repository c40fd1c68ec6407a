import { randomStream } from "@/lib/random";
import type { Call } from "@/lib/report";
import type { TruthItem } from "@/lib/specimen";
import { exactCall } from "../support/marking-cases";
import { MARKING_PROPERTIES } from "../support/marking-properties";
import {
  assessmentFace,
  blindCall,
  carefulCall,
  markCap,
  marksOf,
  randomTruth,
  underSecondType,
  widened,
} from "../support/marking-simulation";

const INDICATIONS = 8;
const CASES_OF_A_LONG_RUN = 100_000;

/** Times of marking and what tricks bring in; with `long`, every property of the rule on 100,000 random cases. */
export async function benchScoring({ long }: { long: boolean }): Promise<string[]> {
  const lines = [
    timed("12 truths, 15 calls", 500, (name) => reportOf(name, 12, 15)),
    timed("15 truths, 200 blind calls", 30, (name) => reportOf(name, 15, 200)),
    timed("200 calls on one long truth", 3, pileUp),
    ...gaming(long ? 5_000 : 500),
  ];
  return long ? [...lines, ...longRun()] : lines;
}

interface Report {
  readonly items: readonly TruthItem[];
  readonly calls: readonly Call[];
}

/** Half of the calls careful, the others blind. */
function reportOf(name: string, truths: number, calls: number): Report {
  const random = randomStream(`bench-${name}`);
  const items = Array.from({ length: truths }, (_, i) => randomTruth(random, `cap-${i + 1}`));
  const careful = items.slice(0, Math.ceil(calls / 2)).map((item, i) => carefulCall(random, item, `call-${i}`));
  const blind = Array.from({ length: calls - careful.length }, (_, i) => blindCall(random, `blind-${i}`));
  return { items, calls: [...careful, ...blind] };
}

function pileUp(name: string): Report {
  const random = randomStream(`pile-${name}`);
  const item: TruthItem = { ...randomTruth(random, "cap-1"), type: "overlap", size: null, start: 20, end: 270 };
  const calls = Array.from({ length: 200 }, (_, i) => {
    const start = random.uniform(20, 220);
    return { ...exactCall(item, `call-${i}`), start, end: start + random.uniform(5, 50) };
  });
  return { items: [item], calls };
}

/** Best of three for each report, since other work on the machine is none of marking's. */
function timed(what: string, count: number, make: (name: string) => Report): string {
  for (let n = 0; n < count / 10; n++) {
    const { items, calls } = make(`warm-${n}`);
    markCap(items, calls);
  }
  const times: number[] = [];
  for (let n = 0; n < count; n++) {
    const { items, calls } = make(String(n));
    times.push(Math.min(timeOf(items, calls), timeOf(items, calls), timeOf(items, calls)));
  }
  times.sort((a, b) => a - b);
  const at = (share: number) => times[Math.min(count - 1, Math.floor(share * count))].toFixed(2);
  return `marking a face, ${what}: median ${at(0.5)} ms, p95 ${at(0.95)} ms, longest ${at(1)} ms`;
}

function timeOf(items: readonly TruthItem[], calls: readonly Call[]): number {
  const begun = performance.now();
  markCap(items, calls);
  return performance.now() - begun;
}

/** Mean marks of the honest and of those who try tricks, on faces as an assessment has them. */
function gaming(faces: number): string[] {
  const sums = new Map<string, number>();
  const add = (what: string, marks: number) => sums.set(what, (sums.get(what) ?? 0) + marks);
  for (let n = 0; n < faces; n++) {
    const random = randomStream(`gaming-${n}`);
    const items = assessmentFace(random, INDICATIONS);
    const careful = items.map((item, i) => carefulCall(random, item, `call-${i}`));
    const honest = marksOf(items, careful);
    const cost = (calls: readonly Call[]) => honest - marksOf(items, calls);
    add("a careful inspector (0.3 mm along, 0.5 mm across, 0.1 mm size) has", honest);
    for (const count of [1, 4, 8, 16, 40]) {
      const blind = Array.from({ length: count }, (_, i) => blindCall(random, `blind-${i}`));
      add(`${count} blind calls have`, marksOf(items, blind));
    }
    add("one stray call costs", cost([...careful, blindCall(random, "stray")]));
    add("every find under a second type costs", cost([...careful, ...careful.map((c) => underSecondType(random, c))]));
    add("every find twice costs", cost([...careful, ...careful.map((call) => ({ ...call, id: `${call.id}-again` }))]));
    add("every call 10 mm wider at both ends costs", cost(careful.map((call) => widened(call, 10))));
  }
  return [...sums].map(([what, sum]) => `${what} ${(sum / faces).toFixed(2)} marks on average (${faces} faces of 8)`);
}

function longRun(): string[] {
  return Object.entries(MARKING_PROPERTIES).map(([name, check]) => {
    const seed = Math.floor(performance.timeOrigin) % 1_000_000_000;
    const begun = performance.now();
    check({ numRuns: CASES_OF_A_LONG_RUN, seed });
    const seconds = ((performance.now() - begun) / 1000).toFixed(0);
    return `holds on ${CASES_OF_A_LONG_RUN} cases, seed ${seed}, ${seconds} s: ${name}`;
  });
}
