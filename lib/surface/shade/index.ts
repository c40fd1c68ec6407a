export type { Light, Picture, View } from "./light";
export { occlusionOf } from "./occlusion";
export { renderQuick } from "./render-quick";
export { renderView } from "./render-view";
