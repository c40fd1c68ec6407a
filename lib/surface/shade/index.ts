export type { Light, Picture, View } from "./light";
export { renderView } from "./render-view";
