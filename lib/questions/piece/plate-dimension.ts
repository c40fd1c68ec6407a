import { DEFAULT_DIMENSION_TOLERANCES } from "../../results";
import type { DimensionTruth, Truth } from "../../specimen";
import type { Dimension, Face } from "../../weld";
import type { Choice, Kind } from "../kind";
import { measuredChoice, positive } from "../numbers";
import { wholeMm } from "../words";

interface AskedOfPlate {
  readonly name: string;
  readonly dimension: Dimension;
  readonly face: Face;
  readonly stem: string;
  /** Other dimensions that are taken for it. */
  readonly mistaken: readonly { readonly dimension: Dimension; readonly why: string }[];
  readonly tooLow: string;
  readonly tooHigh: string;
}

export const dimensionOf = (
  truth: Truth,
  dimension: Dimension,
  station: number | null = null,
): DimensionTruth | undefined => truth.dimensions.find((one) => one.dimension === dimension && one.station === station);

/** Values on either side that somebody gets who sets the gauge down wrongly, further off than a careful hand ever is. */
export const misread = (value: number, tolerance: number, tooLow: string, tooHigh: string): Choice[] => [
  measuredChoice(value - 2.4 * tolerance, tooLow),
  measuredChoice(value - 4.2 * tolerance, tooLow),
  measuredChoice(value - 6.6 * tolerance, tooLow),
  measuredChoice(value + 2.4 * tolerance, tooHigh),
  measuredChoice(value + 4.2 * tolerance, tooHigh),
  measuredChoice(value + 6.6 * tolerance, tooHigh),
];

/** A kind that asks for the largest value of a dimension of a plate. */
export const plateDimension = ({ name, dimension, face, stem, mistaken, tooLow, tooHigh }: AskedOfPlate): Kind => ({
  name,
  source: "piece",
  sections: ["plate"],
  draft: ({ truth }) => {
    const found = dimensionOf(truth, dimension);
    if (!found || found.at === null) return null;
    const { value, at, along } = found;
    const tolerance = DEFAULT_DIMENSION_TOLERANCES[dimension];
    const measured = along?.values.filter((one) => one !== null) ?? [];
    const least =
      measured.length > 0 ? [measuredChoice(Math.min(...measured), "that is the least along the weld")] : [];
    const other = mistaken.flatMap(({ dimension: another, why }) => {
      const taken = dimensionOf(truth, another);
      return taken ? [measuredChoice(taken.value, why)] : [];
    });
    return {
      stem,
      tolerance,
      right: measuredChoice(value, `the largest was measured at ${wholeMm(at)} mm from the datum end`),
      wrong: positive([...least, ...other, ...misread(value, tolerance, tooLow, tooHigh)]),
      place: { face, start: at, end: at },
    };
  },
});
