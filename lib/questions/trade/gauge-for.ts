import { GAUGES, type GaugeKind } from "../../gauges";
import { BOTH_SECTIONS, type Kind } from "../kind";

interface Job {
  readonly what: string;
  readonly gauge: GaugeKind;
  /** Gauges of the tray that would do as well and are no wrong option. */
  readonly alsoDo: readonly GaugeKind[];
}

/** What each gauge of the tray is for; common practice, no source. */
const JOBS: readonly Job[] = [
  { what: "the depth of an undercut", gauge: "depth-gauge", alsoDo: ["profile-comb", "height-gauge", "feeler"] },
  { what: "the depth of a crater", gauge: "depth-gauge", alsoDo: ["profile-comb", "height-gauge", "feeler"] },
  { what: "how high a cap stands over the plates", gauge: "height-gauge", alsoDo: ["profile-comb", "hook-gauge"] },
  { what: "how high a root stands over the plates", gauge: "height-gauge", alsoDo: ["profile-comb", "hook-gauge"] },
  {
    what: "the step between two butt-welded plates",
    gauge: "hook-gauge",
    alsoDo: ["height-gauge", "depth-gauge", "profile-comb"],
  },
  { what: "the thickness of a plate over its edge", gauge: "caliper", alsoDo: ["steel-rule", "profile-comb"] },
  { what: "the throat of a fillet, in tenths of a millimetre", gauge: "fillet-gauge", alsoDo: [] },
  { what: "the leg of a fillet, in tenths of a millimetre", gauge: "fillet-gauge", alsoDo: ["caliper"] },
  { what: "how wide a slot under a standing plate is", gauge: "feeler", alsoDo: ["steel-rule", "caliper"] },
  { what: "how far along the weld an indication reaches", gauge: "steel-rule", alsoDo: ["caliper"] },
];

export const gaugeFor: Kind = {
  name: "gauge-for",
  source: "trade",
  sections: BOTH_SECTIONS,
  draft: (_, random) => {
    const { what, gauge, alsoDo } = random.pick(JOBS);
    const others = (Object.keys(GAUGES) as GaugeKind[]).filter((kind) => kind !== gauge && !alsoDo.includes(kind));
    return {
      stem: `Which gauge of the tray do you take to measure ${what}?`,
      right: { text: GAUGES[gauge].name, why: `it measures ${GAUGES[gauge].measures} (common practice, no source)` },
      wrong: others.map((kind) => ({ text: GAUGES[kind].name, why: `that is for ${GAUGES[kind].measures}` })),
      place: null,
    };
  },
};
