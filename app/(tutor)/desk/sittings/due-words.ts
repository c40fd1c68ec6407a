import type { DueInClass, WhyDue } from "@/app/_server/sitting-views";
import { SECTION_WORDS } from "@/app/_ui/section-names";
import { list } from "./sitting-words";

type Due = DueInClass["learners"][number]["sections"];

const WHY: Readonly<Record<WhyDue, (sections: string) => string>> = {
  "re-sit": (sections) => `re-sit of ${sections}`,
  "new-round": (sections) => `new round: ${sections}`,
  "not-sat": (sections) => `still to sit: ${sections}`,
};

/** "re-sit of fillet weld; still to sit: butt plate". */
export function dueWords(sections: Due): string {
  return (Object.keys(WHY) as WhyDue[])
    .map((why) => {
      const named = sections.filter((one) => one.why === why).map(({ section }) => SECTION_WORDS[section]);
      return named.length > 0 ? WHY[why](list(named)) : "";
    })
    .filter(Boolean)
    .join("; ");
}
