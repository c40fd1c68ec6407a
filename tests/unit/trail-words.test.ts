import { describe, expect, test } from "vitest";
import { lookWords, missesWords, seconds } from "@/app/_marks/trail/trail-words";
import type { TimeInSight } from "@/lib/trail";

const NONE: TimeInSight = { afar: 0, close: 0, low: 0, lowFrom: [0, 0, 0, 0, 0, 0, 0, 0] };
const FAR = { ...NONE, afar: 41 };
const STEEP = { ...NONE, close: 14, low: 1 };
const LOW = { ...NONE, afar: 3, close: 75, low: 9, lowFrom: [3, 0, 5.5, 0, 0.5, 0, 0, 0] };

test.each([
  [{ ...NONE, afar: 1.5 }, "You never looked here."],
  [FAR, "You saw this place only from afar: 41 s in sight, too small on the screen to see much."],
  [{ ...FAR, close: 1.5 }, "You saw this place only from afar: 43 s in sight, too small on the screen to see much."],
  [STEEP, "You looked here for 14 s, but never with the torch low."],
  [
    LOW,
    "You looked here and passed over it: 1 min 15 s close up, 9 s of that with the torch low (from the top and right).",
  ],
  [
    { ...LOW, low: 2, lowFrom: [0.5, 0.5, 0.5, 0.5, 0, 0, 0, 0] },
    "You looked here and passed over it: 1 min 15 s close up, 2 s of that with the torch low.",
  ],
])("case %#", (time, words) => {
  expect(lookWords(time)).toBe(words);
});

describe("all misses together", () => {
  test.each([
    [[NONE], "The one miss was never looked at."],
    [[STEEP], "The one miss was looked at, but never with the torch low."],
    [[LOW, NONE, LOW, FAR, LOW], "Of 5 misses: 1 never looked at; 1 seen only from afar; 3 looked at and passed over."],
  ])("case %#", (times, words) => {
    expect(missesWords(times)).toBe(words);
  });
});

test.each([
  [0.4, "0 s"],
  [59.4, "59 s"],
  [60, "1 min"],
  [119.6, "2 min"],
  [125, "2 min 5 s"],
])("%s s reads %s", (time, words) => {
  expect(seconds(time)).toBe(words);
});
