export {
  adjusted,
  BRIDGE_GAUGE,
  type BridgePlacement,
  type BridgeReading,
  type BridgeRefusal,
  pointsOf,
  readBridgeGauge,
  type Seat,
} from "./bridge-gauge";
export { cutSection, type SectionPoint } from "./section";
