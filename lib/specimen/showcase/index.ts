export { type Example, type Showcase, showcases } from "./showcase";
