/** The printed page, A4 upright at ten dots per millimetre of paper. */
export const PAGE = { width: 2100, height: 2970, dotsPerInch: 254, left: 150, right: 1950 } as const;
/** Dots of paper per millimetre of specimen: six tenths of full size. */
export const DOTS_PER_MM = 6;
export const SCALE_NOTE = "Scale 6 : 10";
export const CAUTION = "Practice only. Follow the governing code, the written procedure and a qualified inspector.";

export interface TextStyle {
  readonly size?: number;
  readonly weight?: number;
  readonly anchor?: "start" | "middle" | "end";
  readonly colour?: string;
}
