import { whichSentenced } from "./which-sentenced";

export const whichAccepted = whichSentenced(
  "which-accepted",
  "accept",
  "reject",
  "each of these is the only indication on its piece. Which one is accepted?",
);
