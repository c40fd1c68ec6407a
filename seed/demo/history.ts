import { DEMO_CLASSES, type DemoClass, type DemoClasses, type DemoLearner } from "./classes";
import { minutesAfter, workday } from "./days";
import { PRACTISED } from "./pieces";
import { enrolment, papers } from "./steps/enrol";
import { drillRound, practice, unfinished } from "./steps/practise";
import { type DemoSitting, plannedOn, sitting } from "./steps/sit";
import type { Entry } from "./writing";

/** What everybody practises, working days before the opening. */
const PRACTICE_DAYS = [
  [24, "plate"],
  [20, "fillet"],
  [18, "plate"],
  [13, "plate"],
  [10, "fillet"],
  [5, "plate"],
] as const;
const DRILL_DAYS = [
  [25, "read-scale"],
  [19, "seat-gauge"],
  [14, "read-scale"],
  [11, "find-largest"],
  [4, "read-scale"],
] as const;
/** Working days before the opening on which it all began. */
const BEGAN = 27;

/** The past of the demo workshop in the order of time: it ends on the day of its opening. */
export function demoHistory(openedAt: Date, classes: DemoClasses = DEMO_CLASSES): readonly Entry[] {
  const on = (before: number, time: string) => workday(openedAt, before, time);
  const beganAt = on(BEGAN, "08:00");
  const [morning, evening] = classes;
  const sat = (
    demoClass: DemoClass,
    number: number,
    before: number,
    time: string,
    rest: Pick<DemoSitting, "paper" | "who" | "ends"> & Partial<DemoSitting>,
  ) =>
    sitting({
      demoClass,
      key: `${demoClass.key}-${number}`,
      at: on(before, time),
      plannedOn: plannedOn(openedAt, before),
      beganAt,
      ...rest,
    });
  const released = { how: "released" } as const;
  const entries = [
    papers("maren", on(BEGAN, "07:40")),
    ...classes.map((one) => enrolment(one, beganAt)),
    ...classes.flatMap((one) => one.learners.flatMap((learner, n) => practiceOf(learner, n, openedAt, beganAt))),
    sat(morning, 1, 22, "08:30", {
      paper: "both",
      who: "class",
      ends: released,
      extra: { signInName: "hamid", minutes: 10, reason: "The lens was missing from the tray." },
      voided: { signInName: "joost", section: "fillet", reason: "The light in the bay failed and came back too late." },
    }),
    sat(evening, 1, 21, "16:30", { paper: "both", who: "class", ends: released, absent: ["uri"], slow: ["stellan"] }),
    sat(morning, 2, 17, "08:30", { paper: "both", who: "due", ends: released }),
    sat(evening, 2, 15, "16:30", { paper: "both", who: "due", ends: released }),
    sat(morning, 3, 12, "08:30", { paper: "both", who: "due", ends: released }),
    sat(evening, 3, 9, "16:30", {
      paper: "short",
      who: "class",
      ends: { how: "void", after: 21, reason: "A marked print of this piece hung on the wall." },
    }),
    sat(morning, 4, 6, "09:00", { paper: "short", who: "class", ends: released }),
    sat(evening, 4, 3, "16:30", { paper: "house", who: "class", ends: { how: "closed" }, absent: ["nuria"] }),
    sat(morning, 5, 1, "14:00", { paper: "house", who: "class", ends: { how: "paused", after: 48 } }),
    unfinished("bruno", "plate", on(1, "12:10")),
    unfinished("sana", "fillet", on(1, "12:40")),
    // its pieces are made from what nobody knows, like everybody's
    { ...sat(evening, 5, -2, "16:30", { paper: "both", who: "due", ends: { how: "planned" } }), at: on(0, "00:01") },
  ];
  return entries.toSorted((a, b) => a.at.getTime() - b.at.getTime());
}

/** What one learner does outside sittings; neighbours on the list have different pieces. */
function practiceOf(learner: DemoLearner, n: number, openedAt: Date, beganAt: Date): readonly Entry[] {
  const taken = { plate: 0, fillet: 0 };
  const minute = 3 * n;
  const practised = PRACTICE_DAYS.map(([before, section]) => {
    const keys = section === "plate" ? PRACTISED.butt : PRACTISED.fillet;
    const key = keys[(n + taken[section]++) % keys.length];
    const at = minutesAfter(workday(openedAt, before, "10:00"), minute);
    return practice(learner, { section, key, at, beganAt });
  });
  // not everybody drills as often
  const drilled = DRILL_DAYS.filter((_, day) => (n + day) % 3 !== 0).map(([before, drill]) =>
    drillRound(learner, drill, { at: minutesAfter(workday(openedAt, before, "12:20"), minute), beganAt }),
  );
  return [...practised, ...drilled];
}
