/** Lines of a hard stamp as polylines on a cell 4 wide and 6 high, v running down: [u, v, u, v, ...]. */
export type Glyph = readonly (readonly number[])[];

/** Points of an arc about (u, v), degrees clockwise on the screen from the right. */
function arc(u: number, v: number, radiusU: number, radiusV: number, from: number, to: number): number[] {
  const points: number[] = [];
  const count = Math.ceil(Math.abs(to - from) / 20);
  for (let n = 0; n <= count; n++) {
    const angle = ((from + ((to - from) * n) / count) * Math.PI) / 180;
    points.push(u + radiusU * Math.cos(angle), v + radiusV * Math.sin(angle));
  }
  return points;
}

/** The stamps in the box: digits, a few letters, hyphen, arrow head. */
export const GLYPHS: Readonly<Record<string, Glyph>> = {
  "0": [arc(2, 3, 1.8, 3, 0, 360)],
  "1": [[0.8, 1.2, 2.2, 0, 2.2, 6]],
  "2": [[...arc(2, 1.7, 1.8, 1.7, -170, 35), 0.2, 6, 3.9, 6]],
  "3": [arc(1.8, 1.5, 1.7, 1.5, -160, 90), arc(1.8, 4.5, 1.9, 1.5, -90, 160)],
  "4": [[3, 6, 3, 0, 0.1, 4.2, 4, 4.2]],
  "5": [[3.7, 0, 0.6, 0, 0.4, 2.7, ...arc(1.9, 4.1, 1.9, 1.9, -120, 140)]],
  "6": [[3, 0, 0.8, 3, ...arc(2, 4.2, 1.8, 1.8, -140, 220)]],
  "7": [[0.1, 0, 3.9, 0, 1.5, 6]],
  "8": [arc(2, 1.5, 1.5, 1.5, 0, 360), arc(2, 4.5, 1.9, 1.5, 0, 360)],
  "9": [[1, 6, 3.2, 3, ...arc(2, 1.8, 1.8, 1.8, 40, 400)]],
  A: [
    [0, 6, 2, 0, 4, 6],
    [0.8, 4, 3.2, 4],
  ],
  B: [
    [0.3, 0, 0.3, 6],
    [0.3, 0, 1.9, 0, ...arc(1.9, 1.5, 1.6, 1.5, -90, 90), 0.3, 3],
    [1.9, 3, ...arc(1.9, 4.5, 1.9, 1.5, -90, 90), 0.3, 6],
  ],
  T: [
    [0, 0, 4, 0],
    [2, 0, 2, 6],
  ],
  "-": [[0.7, 3, 3.3, 3]],
  ">": [[0.5, 0.8, 3.8, 3, 0.5, 5.2]],
};
