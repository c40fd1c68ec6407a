import type { HistoryMark } from "@/app/_server/progress/history-of";
import { SECTION_WORDS } from "@/app/_ui/section-names";
import {
  type Agreement,
  ENOUGH,
  type EyeMeasure,
  type FalseCallRate,
  type Share,
  type SignalDetection,
} from "@/lib/progress";
import { MARKED_SECTIONS } from "@/lib/results";

/** 0.6538 to "65 %". */
export const percent = (share: number): string => `${Math.round(100 * share)} %`;

/** "34 of 52, that is 65 % (52 to 77 %)"; what is not enough yet says how much more it takes. */
export function shareWords({ count, of, share, interval, needed }: Share): string {
  if (share === null || interval === null) return "none yet";
  const counted = `${count} of ${of}`;
  if (needed > 0) return `${counted}; not enough yet to say how often: ${needed} more`;
  return `${counted}, that is ${percent(share)} (${percent(interval.low)} to ${percent(interval.high)})`;
}

/** Where somebody stands, in one sentence, by the last pieces of each section; it speaks to the learner, or of them. */
export function standingWords(history: readonly HistoryMark[], to: "learner" | "tutor"): string {
  const told = MARKED_SECTIONS.flatMap((section) => {
    const all = history.filter((mark) => mark.section === section);
    const latest = all.at(-1);
    if (!latest) return [];
    const recent = all.slice(-5);
    const passed = recent.filter(({ isPassed }) => isPassed).length;
    const whose = to === "learner" ? "your" : "the";
    const before = recent.length === 1 ? "" : `, and ${passed} of ${whose} last ${recent.length} passed`;
    return [
      `${whose} latest ${SECTION_WORDS[section]} earned ${latest.mark.toFixed(1)} marks and needed ${latest.passMark}${before}`,
    ];
  });
  const sentence = `${told.join("; ")}.`;
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}

/** Which way measuring is off, in plain words. */
export function directionWords({ bias, direction, limits, needed }: Agreement, unit: string): string {
  const off = `${Math.abs(bias).toFixed(2)} ${unit}`;
  const spread = `95 of 100 lie between ${signed(limits.low)} and ${signed(limits.high)} ${unit} of what is true`;
  const way =
    direction === "neither"
      ? `on average ${signed(bias)} ${unit}, which may be chance`
      : `on average ${off} too ${direction === "over" ? "large" : "small"}`;
  return needed > 0 ? `${way} so far; not enough yet to rely on: ${needed} more` : `${way}; ${spread}`;
}

export const signed = (value: number): string => `${value < 0 ? "−" : "+"}${Math.abs(value).toFixed(2)}`;

/** False calls per metre in a sentence, with the range where one can be told. */
export function falseCallWords({ count, metres, perMetre, interval }: FalseCallRate): string {
  if (perMetre === null) return "No weld has been looked at yet.";
  const calls = count === 1 ? "1 call" : `${count} calls`;
  const range = interval && ` (${interval.low.toFixed(2)} to ${interval.high.toFixed(2)})`;
  return `${calls} where nothing is to be called, on ${metres.toFixed(1)} m of weld: ${perMetre.toFixed(2)} a metre${range ?? ""}.`;
}

/** How well imperfections are told from what is harmless; the bounds of the words are common practice, no source. */
export function tellingWords(detection: SignalDetection): string {
  const { sensitivity, sensitivityInterval, criterion, criterionInterval, needed } = detection;
  if (needed > 0) {
    return `How well imperfections are told from harmless features is not to be said yet: ${needed} more of either are needed.`;
  }
  const well = sensitivity < 1 ? "hardly" : sensitivity < 2 ? "fairly well" : "well";
  const lean =
    criterionInterval.low > 0
      ? "when in doubt nothing is called, so that more is missed than need be"
      : criterionInterval.high < 0
        ? "when in doubt something is called, so that more is called than is there"
        : "when in doubt neither calling nor passing over prevails";
  const range = `${sensitivityInterval.low.toFixed(1)} to ${sensitivityInterval.high.toFixed(1)}`;
  return `Imperfections are told from harmless features ${well} (d′ ${sensitivity.toFixed(1)}, ${range}; 0 is guessing); ${lean} (criterion ${signed(criterion)}).`;
}

export const MEASURE_WORDS: Readonly<Record<EyeMeasure, { readonly title: string; readonly axis: string }>> = {
  size: { title: "height, depth or diameter", axis: "height, depth or diameter, mm" },
  length: { title: "length", axis: "length along the weld, mm" },
  width: { title: "width", axis: "width across, mm" },
};

export const NOT_ENOUGH_NOTE = `Thin dashed lines with a hollow mark stand for fewer than ${ENOUGH}: not enough yet, and how many more it takes.`;
