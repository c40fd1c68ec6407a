import { whichSentenced } from "./which-sentenced";

export const whichRejected = whichSentenced(
  "which-rejected",
  "reject",
  "accept",
  "each of these is the only indication on its piece. Which one is rejected?",
);
