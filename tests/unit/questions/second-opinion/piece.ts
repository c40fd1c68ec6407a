import { CATALOGUE } from "../../../../lib/imperfections";
import type { FilletTruth, TruthItem } from "../../../../lib/specimen";
import {
  type Asked,
  byNumber,
  byText,
  clutterNamed,
  faceIn,
  numberIn,
  numbersIn,
  type Opinion,
  typeNamed,
  typeWithin,
} from "./reading";

/*
 * The marking rule lets a start and an end be off by 5 mm or a tenth of the length, a plate dimension by 0.5 mm (its width by
 * 1 mm), legs and throats by 0.5 mm; written down here again. Misalignment has no place along the weld.
 */
const MISALIGNED = ["linear-misalignment", "angular-misalignment", "incorrect-root-gap"];
const endOff = (length: number) => (length > 50 ? length / 10 : 5);

function seen({ truth }: Asked, face: string, withFaint = false): TruthItem[] {
  const found: TruthItem[] = [];
  for (const item of truth.items) {
    if (item.face !== face || MISALIGNED.includes(item.type)) continue;
    if (item.neutral && !withFaint) continue;
    found.push(item);
  }
  return found;
}

/**
 * What is sure to be recorded and what anybody might record: a careful hand misreads a size by less than 0.25 mm (common practice,
 * no source), so that what reaches its recordable size by less than that is recorded by some, and so is what falls short of it.
 */
function recordedBy(asked: Asked, face: string, who: "everybody" | "somebody"): TruthItem[] {
  if (who === "somebody") return seen(asked, face, true);
  return seen(asked, face).filter(({ type, size }) => {
    const from = CATALOGUE[type].recordedFrom;
    return size === null || from === 0 || size >= from + 0.25;
  });
}

/** The options that are right both ways: with what everybody records, and with what anybody might. */
function eitherWay(asked: Asked, opinion: (who: "everybody" | "somebody") => boolean[]): boolean[] {
  const [sure, all] = [opinion("everybody"), opinion("somebody")];
  return asked.question.options.map((_, n) => sure[n] && all[n]);
}

const isUndercut = (item: TruthItem) => item.type === "continuous-undercut" || item.type === "intermittent-undercut";

const longestUndercut: Opinion = (asked) => {
  const face = faceIn(asked.question.stem);
  let longest = 0;
  for (const item of seen(asked, face)) if (isUndercut(item)) longest = Math.max(longest, item.end - item.start);
  // another one that could be measured longer would make the question unanswerable
  let rivals = 0;
  for (const item of seen(asked, face, true)) {
    const length = item.end - item.start;
    if (isUndercut(item) && length + 2 * endOff(length) >= longest - 2 * endOff(longest)) rivals++;
  }
  if (rivals !== 1) return [false, false, false, false];
  return byNumber(asked, longest, 0.51, 2 * endOff(longest));
};

const undercutToe: Opinion = (asked) =>
  eitherWay(asked, (who) => {
    let above = 0;
    let below = 0;
    for (const item of recordedBy(asked, faceIn(asked.question.stem), who)) {
      if (!isUndercut(item)) continue;
      if (item.across > 0) above++;
      else below++;
    }
    return byText(asked, (option) => {
      if (option.startsWith("At the toes on both")) return above > 0 && below > 0;
      if (option.startsWith("Not at either")) return above + below === 0;
      const isAbove = option.endsWith("plate A") || option.endsWith("base plate");
      return isAbove ? above > 0 && below === 0 : below > 0 && above === 0;
    });
  });

const firstFromDatum: Opinion = (asked) =>
  eitherWay(asked, (who) => {
    const all = recordedBy(asked, faceIn(asked.question.stem), who);
    let first = all[0];
    for (const item of all) if (item.start < first.start) first = item;
    const tie = all.some((item) => item !== first && item.start - first.start <= 2 * 5);
    return byText(asked, (option) => first !== undefined && !tie && typeNamed(option) === first.type);
  });

const longestIndication: Opinion = (asked) => {
  const all = seen(asked, faceIn(asked.question.stem), true);
  return byText(asked, (option) => {
    const own = Math.max(
      ...all.filter(({ type, neutral }) => !neutral && type === typeNamed(option)).map(({ start, end }) => end - start),
    );
    const worst = own - 2 * endOff(own);
    let beaten = 0;
    for (const { start, end } of all) if (end - start + 2 * endOff(end - start) >= worst) beaten++;
    return beaten === 1;
  });
};

const poresIn25: Opinion = (asked) =>
  eitherWay(asked, (who) => {
    const places = recordedBy(asked, faceIn(asked.question.stem), who)
      .filter(({ type }) => type === "surface-pore")
      .map(({ start }) => start);
    // windows on a fine grid instead of windows that begin at a pore
    const most = (window: number) => {
      let best = 0;
      for (let from = -window; from <= 300; from += 0.05) {
        let count = 0;
        for (const place of places) if (place >= from && place <= from + window) count++;
        best = Math.max(best, count);
      }
      return best;
    };
    const [short, exact, long] = [most(15.1), most(25), most(34.9)];
    return byText(asked, (option) => Number(option) === exact && short === long);
  });

/** Whatever lies so near the stretch in the stem that it could be meant instead. */
function meant(asked: Asked): { name: string }[] {
  const { stem } = asked.question;
  const face = faceIn(stem);
  const isPoint = /face at |fillet at /.test(stem);
  const [from, second, third] = numbersIn(stem);
  const to = isPoint ? from : second;
  const distance = isPoint ? second : third;
  const sign = /plate A|base plate/.test(stem) ? 1 : -1;
  const across = stem.includes("towards") ? sign * distance : 0;
  const near = (one: { face: string; start: number; end: number; across: number }) =>
    one.face === face && one.start <= to + 10 && one.end >= from - 10 && Math.abs(one.across - across) < 11;
  return [
    ...seen(asked, face, true)
      .filter(near)
      .map(({ type }) => ({ name: type })),
    ...asked.truth.clutter.filter(near).map(({ kind }) => ({ name: kind })),
  ];
}

const whatLies: Opinion = (asked) => {
  const there = meant(asked);
  return byText(asked, (option) => there.length === 1 && (typeNamed(option) ?? clutterNamed(option)) === there[0].name);
};

const placeOfType: Opinion = (asked) => {
  const { stem } = asked.question;
  const type = typeWithin(stem);
  const all = seen(asked, faceIn(stem), true).filter((item) => item.type === type);
  if (all.length !== 1 || all[0].neutral) return [false, false, false, false];
  return byNumber(asked, all[0].start, 0.51, endOff(all[0].end - all[0].start));
};

const cleanStretch: Opinion = (asked) => {
  const face = faceIn(asked.question.stem);
  return eitherWay(asked, (who) => {
    const there = recordedBy(asked, face, who);
    const clean = asked.question.options.map((option) => {
      const [from, to] = numbersIn(option);
      // every millimetre of it
      for (let x = from; x <= to; x++) {
        for (const { start, end } of there) if (start <= x + 0.5 && end >= x - 0.5) return false;
      }
      return true;
    });
    // what only some record leaves a second stretch clean to the others
    return clean.filter(Boolean).length === 1 ? clean : [false, false, false, false];
  });
};

const whichFace: Opinion = (asked) => {
  const type = typeNamed(asked.question.stem.split(":")[0]);
  return eitherWay(asked, (who) => {
    const on = (face: string) => recordedBy(asked, face, who).some((item) => item.type === type);
    return byText(asked, (option) => {
      if (option === "On the cap face only") return on("cap") && !on("root");
      if (option === "On the root face only") return on("root") && !on("cap");
      if (option === "On neither of the faces") return !on("root") && !on("cap");
      return on("cap") && on("root");
    });
  });
};

function highest(asked: Asked, dimension: string): number {
  let best = 0;
  for (const one of asked.truth.dimensions) {
    if (one.dimension !== dimension) continue;
    for (const value of one.along?.values ?? []) best = Math.max(best, value ?? 0);
  }
  return best;
}

const stationed = (asked: Asked, dimension: string): number => {
  const station = numberIn(asked.question.stem.slice(asked.question.stem.indexOf("station")));
  for (const one of asked.truth.dimensions)
    if (one.dimension === dimension && one.station === station) return one.value;
  return Number.NaN;
};

const smallestThroat: Opinion = (asked) => {
  let least = Number.POSITIVE_INFINITY;
  for (const one of asked.truth.dimensions) {
    if (one.dimension === "smallest-throat")
      for (const value of one.along?.values ?? []) least = Math.min(least, value ?? least);
  }
  return byNumber(asked, least, 0.051, 0.5);
};

const statement = (asked: Asked, name: string) => asked.truth.statements.find((one) => one.statement === name);

/*
 * Each statement decided from its number, by whatever somebody reads who is off by as much as the marking rule lets him: the
 * profile by 0.3 mm (common practice, no source), a leg or a throat by 0.5 mm, the difference of two legs by both together.
 */
function sizeWords(asked: Asked): string {
  const size = statement(asked, "size");
  const drawn = (asked.truth as FilletTruth).joint.size.value;
  if (!size) return "doubtful";
  if (size.value - 0.5 > drawn) return "drawing size met";
  return size.value + 0.5 < drawn ? "drawing size not met" : "doubtful";
}

const profileAndSize: Opinion = (asked) => {
  const bulge = statement(asked, "profile")?.value ?? 0.5;
  const lying = (read: number) => (read >= 0.5 ? "Convex face" : read <= -0.5 ? "Concave face" : "Mitre face");
  const profile = lying(bulge - 0.3);
  if (profile !== lying(bulge + 0.3)) return [false, false, false, false];
  return byText(asked, (option) => option === `${profile}, ${sizeWords(asked)}`);
};

const legsAndSize: Opinion = (asked) => {
  const difference = statement(asked, "asymmetry")?.value ?? 2;
  const [least, most] = [difference - 0.5 - 0.5, difference + 0.5 + 0.5];
  if (least <= 2 && most >= 2) return [false, false, false, false];
  return byText(asked, (option) => option === `${least > 2 ? "Legs unequal" : "Legs equal"}, ${sizeWords(asked)}`);
};

const gapAtEnd: Opinion = (asked) => {
  const { datum, farEnd } = (asked.truth as FilletTruth).gap;
  // 0.5 mm is what a report may be off
  const is = (gap: number, open: boolean) => (open ? gap > 1.5 : gap < 0.5);
  return byText(asked, (option) => {
    if (option === "At the datum end only") return is(datum, true) && is(farEnd, false);
    if (option === "At the far end only") return is(datum, false) && is(farEnd, true);
    if (option === "At both of the ends") return is(datum, true) && is(farEnd, true);
    return is(datum, false) && is(farEnd, false);
  });
};

export const PIECE: Readonly<Record<string, Opinion>> = {
  "longest-undercut": longestUndercut,
  "undercut-toe": undercutToe,
  "first-from-datum": firstFromDatum,
  "longest-indication": longestIndication,
  "pores-in-25-mm": poresIn25,
  "type-at-place": whatLies,
  "harmless-mark": whatLies,
  "place-of-type": placeOfType,
  "clean-stretch": cleanStretch,
  "which-face": whichFace,
  "cap-height": (asked) => byNumber(asked, highest(asked, "cap-height"), 0.051, 0.5),
  "root-height": (asked) => byNumber(asked, highest(asked, "root-height"), 0.051, 0.5),
  "weld-width": (asked) => byNumber(asked, highest(asked, "weld-width"), 0.051, 1),
  "leg-at-station": (asked) =>
    byNumber(
      asked,
      stationed(asked, asked.question.stem.includes("base plate") ? "base-leg" : "standing-leg"),
      0.051,
      0.5,
    ),
  "throat-at-station": (asked) => byNumber(asked, stationed(asked, "throat"), 0.051, 0.5),
  "smallest-throat": smallestThroat,
  "profile-and-size": profileAndSize,
  "legs-and-size": legsAndSize,
  "gap-at-end": gapAtEnd,
};
