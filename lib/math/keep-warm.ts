/** So many functions are held: more than a few faces of a specimen make. */
const MOST = 4096;
const held: unknown[] = [];
let count = 0;

/**
 * Holds a function that is made anew for every piece of work, such as what is done with each pixel, until many others have come
 * after it, and gives it back. At a garbage collection the engine drops the machine code of a function of which nobody holds any
 * closure, and compiles it anew when the next one is called: on one core that took a sixth of a face's time.
 */
export function keepWarm<F extends object>(made: F): F {
  held[count++ % MOST] = made;
  return made;
}
