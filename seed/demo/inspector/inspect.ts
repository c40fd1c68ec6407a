import type { Criteria } from "@/lib/criteria";
import { type ImperfectionType, imperfection, likeness, typesOn } from "@/lib/imperfections";
import type { RandomStream } from "@/lib/random";
import { type Call, EMPTY_REPORT, type Measure, type Report, SENTENCES, type WrittenSentence } from "@/lib/report";
import { DEFAULT_DIMENSION_TOLERANCES } from "@/lib/results";
import type { Truth, TruthItem } from "@/lib/specimen";
import {
  ASKED_DIMENSIONS,
  DIMENSION_FACTS,
  PIECES,
  STATEMENT_ANSWERS,
  type Stated,
  type SurfaceFace,
} from "@/lib/weld";
import { chanceOf } from "./detection";
import { withSentences } from "./sentences";
import type { Skill } from "./skill";

/** What somebody of an ability and a skill would write of a piece whose truth is known; the same stream gives the same report. */
export function inspect(truth: Truth, criteria: Criteria, skill: Skill, ability: number, random: RandomStream): Report {
  const kind = truth.joint.kind;
  const found = truth.items
    .filter(({ neutral }) => !neutral)
    .flatMap((item) => {
      const own = random.child(`item/${item.id}`);
      return own.chance(chanceOf(item, truth, ability, skill)) ? [callOn(item, truth, skill, own)] : [];
    });
  const calls = [...found, ...falseCalls(truth, skill, random.child("false calls"))]
    .sort((a, b) => PIECES[kind].faces.indexOf(a.face) - PIECES[kind].faces.indexOf(b.face) || a.start - b.start)
    .map((call, n): Call => ({ ...call, id: `c${n + 1}`, sentence: null }));
  const measures = measured(truth, skill, random.child("dimensions"));
  const statements = stated(truth, skill, random.child("statements"));
  const written = withSentences({ ...EMPTY_REPORT, calls, measures, statements }, truth.joint, criteria);
  return decided(written, skill, random.child("sentences"));
}

type Placed = Omit<Call, "id" | "sentence"> & { readonly start: number };

function callOn(item: TruthItem, truth: Truth, skill: Skill, random: RandomStream): Placed {
  const { sizeBias, sizeScatter, placeScatter } = skill;
  const type = random.chance(skill.confusion) ? lookAlike(item, random) : item.type;
  const along = () => random.normal(0, placeScatter);
  const start = within(item.start + along(), truth);
  const isLine = imperfection(type).extent === "line";
  const size =
    item.size === null ? random.uniform(0.5, 1.5) : item.size * (1 + sizeBias) + random.normal(0, sizeScatter);
  return {
    face: item.face,
    type,
    start,
    end: isLine ? Math.max(start, within(item.end + along(), truth)) : null,
    across: across(item.across + random.normal(0, placeScatter / 3), truth),
    size: imperfection(type).size === null ? null : tenths(Math.max(0.1, size)),
  };
}

/** Another type of that face that is easily taken for it; the type itself where there is none. */
function lookAlike({ type, face }: TruthItem, random: RandomStream): ImperfectionType {
  const others = typesOn(face).filter(
    (other) => likeness(type, other) === 0.5 && imperfection(other).extent === imperfection(type).extent,
  );
  return others.length > 0 ? random.pick(others) : type;
}

/** Calls of what is not there: most of them on something harmless, where there is any. */
function falseCalls(truth: Truth, skill: Skill, random: RandomStream): Placed[] {
  const { faces, length } = PIECES[truth.joint.kind];
  return Array.from({ length: poisson(skill.falseCalls, random) }, () => {
    const bait = truth.clutter.length > 0 && random.chance(0.6) ? random.pick(truth.clutter) : null;
    const face = bait?.face ?? random.pick<SurfaceFace>(faces);
    const type = random.pick(typesOn(face).filter((one) => imperfection(one).family !== "misalignment"));
    const { extent, size } = imperfection(type);
    const start = within(bait ? bait.start : random.uniform(5, length - 30), truth);
    const end = bait ? Math.max(bait.end, start) : start + random.uniform(3, 25);
    return {
      face,
      type,
      start,
      end: extent === "line" ? Math.max(start, within(end, truth)) : null,
      across: across(bait ? bait.across : random.normal(0, 6), truth),
      size: size === null ? null : tenths(random.uniform(0.3, 1.5)),
    };
  });
}

function measured({ joint, dimensions }: Truth, { measuring }: Skill, random: RandomStream): Measure[] {
  return ASKED_DIMENSIONS[joint.kind].flatMap(({ dimension, station }): Measure[] => {
    const truth = dimensions.find((one) => one.dimension === dimension && one.station === station);
    if (!truth) return [];
    const read = truth.value + random.normal(0, measuring * DEFAULT_DIMENSION_TOLERANCES[dimension]);
    const value = tenths(Math.min(DIMENSION_FACTS[dimension].most, Math.max(0, read)));
    const isPlaced = station === null && truth.at !== null;
    const at = isPlaced ? Math.round(Math.min(PIECES[joint.kind].length, Math.max(0, truth.at ?? 0))) : null;
    return [{ dimension, station, value, at }];
  });
}

function stated({ statements }: Truth, { knowledge }: Skill, random: RandomStream): Stated[] {
  return statements.map(({ statement, right }) => {
    const wrong = STATEMENT_ANSWERS[statement].filter((answer) => !right.includes(answer));
    const answer = random.chance(knowledge) || wrong.length === 0 ? right[0] : random.pick(wrong);
    return { statement, answer } as Stated;
  });
}

function decided(report: Report, { sentencing }: Skill, random: RandomStream): Report {
  const decide = (sentence: WrittenSentence | null) =>
    random.chance(sentencing) ? sentence : random.pick(SENTENCES.filter((other) => other !== sentence));
  return {
    ...report,
    calls: report.calls.map((call) => ({ ...call, sentence: decide(call.sentence) })),
    pieceSentence: decide(report.pieceSentence),
  };
}

/** Knuth's way of drawing a Poisson count, good for small means. */
function poisson(mean: number, random: RandomStream): number {
  const least = Math.exp(-mean);
  let count = 0;
  for (let product = random.uniform(0, 1); product > least; product *= random.uniform(0, 1)) count++;
  return count;
}

const tenths = (value: number): number => Math.round(10 * value) / 10;

const within = (x: number, { joint }: Truth): number => Math.round(Math.min(PIECES[joint.kind].length, Math.max(0, x)));

function across(y: number, { joint }: Truth): number {
  const { halfWidth } = PIECES[joint.kind];
  return Math.round(Math.min(halfWidth, Math.max(-halfWidth, y)));
}
