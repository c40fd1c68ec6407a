import { viewing } from "./viewing";

export const eyeAngle = viewing({
  name: "eye-angle",
  stem: "How flat may your line of sight lie to the surface, at the flattest, for a direct visual test by ISO 17637?",
  unit: "degrees",
  right: 30,
  why: "the line of sight makes no less than 30 degrees with the surface",
  wrong: [
    [5, "so flat an eye sees heights and misses everything behind them"],
    [10, "that is how low a torch may come, not the eye"],
    [15, "that is half of what is asked for"],
    [45, "that is steeper than has to be"],
    [60, "that is steeper than has to be; it is measured from the surface, not from the upright"],
    [90, "that looks straight down, which shows no relief"],
  ],
});
