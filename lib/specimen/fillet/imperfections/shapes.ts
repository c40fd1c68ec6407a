import { mix } from "../../../math";
import type { RandomStream } from "../../../random";
import { forColumns } from "../../runs/edit";
import type { Feature, FeatureRequest } from "../../work";
import { reshapeColumn } from "./reshape";
import { drawStretch } from "./stretch";

/** Builds a feature that only changes how the weld is laid: what comes of it is found when the sizes are measured. */
export type ShapeBuilder = (request: FeatureRequest, random: RandomStream, requiredThroat: number) => Feature;

/** Bead of a full, steep section. */
const FULL_EXPONENT = 2.7;
/** Of the bulge of a weld of two runs this much comes from each. */
const EACH_OF_TWO = 0.75;

/** The face bulges `severity` mm over the line from toe to toe. */
export const excessiveConvexity: ShapeBuilder = (request, random) => {
  const { from, to, share } = drawStretch(request, random);
  return {
    id: request.id,
    plan({ plan: { runs }, strip }) {
      forColumns(strip.grid, from, to, (i, x) => {
        for (const run of runs) {
          const bulge = (runs.length > 1 ? EACH_OF_TWO : 1) * request.severity;
          run.height[i] = mix(run.height[i], Math.max(bulge, run.height[i]), share(x));
          run.exponentMinus[i] = mix(run.exponentMinus[i], FULL_EXPONENT, share(x));
          run.exponentPlus[i] = mix(run.exponentPlus[i], FULL_EXPONENT, share(x));
        }
      });
    },
  };
};

/** One leg gets `severity` mm longer than the other; `side` says on which plate: 1 the standing one. */
export const excessiveAsymmetry: ShapeBuilder = (request, random) => {
  const { from, to, share } = drawStretch(request, random);
  return {
    id: request.id,
    plan({ plan: { runs }, strip }) {
      forColumns(strip.grid, from, to, (i, x) => {
        reshapeColumn(runs, i, ({ base, standing }) =>
          request.side < 0
            ? { base: mix(base, standing + request.severity, share(x)), standing }
            : { base, standing: mix(standing, base + request.severity, share(x)) },
        );
      });
    },
  };
};

/** The throat falls `severity` mm short: legs too short, or ("hollow", a single run) the face too far in. */
export const insufficientThroat: ShapeBuilder = (request, random, requiredThroat) => {
  const { from, to, share } = drawStretch(request, random);
  const throat = requiredThroat - request.severity;
  return {
    id: request.id,
    plan({ plan: { runs }, strip }) {
      const isHollow = request.variant === "hollow" && runs.length === 1;
      forColumns(strip.grid, from, to, (i, x) => {
        for (const run of runs) {
          const height = isHollow ? throat - run.halfWidth[i] : Math.min(run.height[i], 0.4);
          run.height[i] = mix(run.height[i], height, share(x));
        }
        if (isHollow) return;
        const leg = Math.SQRT2 * throat;
        reshapeColumn(runs, i, ({ base, standing }) => ({
          base: mix(base, leg + 0.25, share(x)),
          standing: mix(standing, leg, share(x)),
        }));
      });
    },
  };
};

/** The throat is `severity` mm more than asked for. */
export const excessiveThroat: ShapeBuilder = (request, random, requiredThroat) => {
  const { from, to, share } = drawStretch(request, random);
  const leg = Math.SQRT2 * (requiredThroat + request.severity);
  return {
    id: request.id,
    plan({ plan: { runs }, strip }) {
      forColumns(strip.grid, from, to, (i, x) => {
        reshapeColumn(runs, i, ({ base, standing }) => ({
          base: mix(base, Math.max(base, leg), share(x)),
          standing: mix(standing, Math.max(standing, leg), share(x)),
        }));
      });
    },
  };
};
