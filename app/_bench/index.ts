export { InspectionBench, type InspectionBenchProps } from "./inspection-bench";
export type { Highlight } from "./overlay/outlines";
export { type ProfileMark, ProfilePanel, type ProfilePanelProps } from "./sheet/profile-panel";
export type { SpecimenViewHandle, SpecimenViewProps } from "./sheet/specimen-view-desk";
export type { SatRun } from "./sitting/use-sitting-run";
export { SpecimenView } from "./specimen-view";
export type { FaceHeights } from "./viewer/protocol";
export type { FaceSource } from "./viewer/specimen-link";
export { withGrids } from "./viewer/with-grids";
