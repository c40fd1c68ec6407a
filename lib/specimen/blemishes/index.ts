export { leaveBlemishes } from "./leave-blemishes";
