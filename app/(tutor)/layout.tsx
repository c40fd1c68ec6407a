export { default } from "../(learner)/layout";
