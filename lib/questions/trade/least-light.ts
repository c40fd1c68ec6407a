import { viewing } from "./viewing";

export const leastLight = viewing({
  name: "least-light",
  stem: "How bright has it to be on the surface, at the very least, for a direct visual test by ISO 17637?",
  unit: "lx",
  right: 350,
  why: "at least 350 lx have to fall on the surface; 500 lx are recommended",
  wrong: [
    [50, "that is the light of a corridor, in which nothing fine shows"],
    [100, "that is the light of a store room"],
    [200, "that is too dark for fine cracks"],
    [500, "that is what is recommended, not the least"],
    [750, "that is more than the standard recommends"],
    [1000, "that is asked for other tests and lamps, not as the least here"],
  ],
});
