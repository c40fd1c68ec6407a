/**
 * Units as optional brands: a plain number may be used as any of them, but one cannot be used as another.
 * Mixing screen pixels and millimetres therefore fails to compile.
 */
declare const unit: unique symbol;
export type Mm = number & { readonly [unit]?: "mm" };
/** CSS pixels of the screen. */
export type Px = number & { readonly [unit]?: "px" };
export type Degrees = number & { readonly [unit]?: "deg" };
