export { InspectionBench, type InspectionBenchProps } from "./inspection-bench";
