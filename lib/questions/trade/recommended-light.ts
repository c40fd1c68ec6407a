import { viewing } from "./viewing";

export const recommendedLight = viewing({
  name: "recommended-light",
  stem: "How bright does ISO 17637 recommend it to be on the surface for a direct visual test?",
  unit: "lx",
  right: 500,
  why: "500 lx are recommended; 350 lx are the least",
  wrong: [
    [100, "that is the light of a store room"],
    [200, "that is less than the least"],
    [350, "that is the least, not what is recommended"],
    [600, "that is the number of the largest distance in mm"],
    [750, "that is more than the standard recommends"],
    [1000, "that is asked for other tests and lamps"],
  ],
});
