import type { PaperPiece } from "@/lib/sittings";
import { BLUEPRINTS, type Blueprint, FILLET_BLUEPRINTS, type FilletBlueprint, type FilletChoice } from "@/lib/specimen";
import { FILLET_POSITIONS, FILLET_PROCESSES } from "@/lib/weld";
import { filletBlueprint, plateBlueprint } from "../piece-blueprint";

/** The blueprint of a plate as a paper asks for it; for practice where none does. */
export const plateAsked = (asked: PaperPiece | null): Blueprint =>
  asked ? plateBlueprint(asked) : BLUEPRINTS.practice;

/** The same of a fillet, with what is fixed of its joint. */
export function filletAsked(asked: PaperPiece | null): { blueprint: FilletBlueprint; choice: FilletChoice } {
  if (!asked) return { blueprint: FILLET_BLUEPRINTS.practice, choice: {} };
  const { process, position, thickness } = asked;
  return {
    blueprint: filletBlueprint(asked),
    choice: {
      process: FILLET_PROCESSES.find((one) => one === process),
      position: FILLET_POSITIONS.find((one) => one === position),
      baseThickness: thickness === "drawn" ? undefined : thickness,
    },
  };
}
