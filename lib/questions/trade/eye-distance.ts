import { viewing } from "./viewing";

export const eyeDistance = viewing({
  name: "eye-distance",
  stem: "How far may your eye be from the surface, at the most, for a direct visual test by ISO 17637?",
  unit: "mm",
  right: 600,
  why: "the eye is within 600 mm of the surface",
  wrong: [
    [150, "that is as near as a lens is held"],
    [250, "that is where an eye reads small print"],
    [350, "that is the number of the least light in lx"],
    [450, "that is nearer than the standard asks for"],
    [800, "from there small pores are lost"],
    [1000, "that is an arm's length and more, from which fine cracks are lost"],
    [1500, "that is a look in passing"],
  ],
});
