export type { Light, Picture, View } from "./light";
export { renderQuick } from "./render-quick";
export { renderView } from "./render-view";
