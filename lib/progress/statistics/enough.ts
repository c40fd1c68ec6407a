/** Below so many observations a figure on its own says "not enough yet". Common practice, no source. */
export const ENOUGH = 20;

/** How many more it takes; 0 where there are enough. */
export const stillNeeded = (count: number, least = ENOUGH): number => Math.max(0, least - count);
