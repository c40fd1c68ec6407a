import { SURFACE_FACES } from "../../weld";
import type { SectionObservations } from "./observation";

/** How many steps from one find to the next on the same face, in the order of the report, lead away from the datum, of how many. */
export function stepsAlong(observed: readonly SectionObservations[]): { readonly along: number; readonly all: number } {
  let [along, all] = [0, 0];
  for (const { truths } of observed) {
    for (const face of SURFACE_FACES) {
      const walked = truths
        .filter((truth) => truth.face === face && truth.order !== null)
        .sort((a, b) => (a.order ?? 0) - (b.order ?? 0));
      for (let n = 1; n < walked.length; n++) {
        all += 1;
        along += Number(walked[n].start >= walked[n - 1].start);
      }
    }
  }
  return { along, all };
}
