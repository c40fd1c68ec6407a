export { type RandomStream, randomStream } from "./stream";
