export { TOE_OXIDE } from "./blemish-habits";
export { leaveBlemishes } from "./leave-blemishes";
