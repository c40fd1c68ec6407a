import type { Process } from "../../weld";
import type { Colour } from "../field";
import { linear } from "../imperfections/tones";

/** How the metal of one face looks: oxide skin, and bare metal where crests are rubbed. */
export interface MetalPaint {
  readonly skin: Colour;
  readonly skinPale: Colour;
  /** How bare the metal is where nothing is rubbed, and the most of it that can be bare; 0..1. */
  readonly base: number;
  readonly share: number;
  /** How far brushing reached. */
  readonly brushed: number;
  /** How dark hollows are. */
  readonly hollow: number;
  /** Brown and blue films of oxide. */
  readonly warm: number;
  readonly cold: number;
  readonly rough: { readonly oxide: number; readonly bare: number };
  readonly metal: { readonly oxide: number; readonly bare: number };
}

/** Slag that stays after chipping and brushing. */
export interface SlagPaint {
  readonly dark: Colour;
  readonly pale: Colour;
  /** Added to what decides whether slag stays: less than 0 for less of it. */
  readonly bias: number;
  /** Size of flakes along and across, mm; how soft their edges are; their thickness, mm. */
  readonly flake: readonly [along: number, across: number];
  readonly edge: number;
  readonly thickness: number;
  /** How much it clings to toes and to hollows. */
  readonly toe: number;
  readonly hollow: number;
  readonly rough: number;
}

export interface ProcessPaint {
  readonly cap: MetalPaint;
  readonly root: MetalPaint;
  /** Null where the process leaves none. */
  readonly slag: SlagPaint | null;
}

/** Colour and gloss of weld metal by process. Common practice, no source. */
export const PROCESS_PAINTS: Readonly<Record<Process, ProcessPaint>> = {
  "111": {
    cap: {
      skin: linear("#4b4946"),
      skinPale: linear("#5d564e"),
      base: 0.34,
      share: 0.95,
      brushed: 1,
      hollow: 0.5,
      warm: 0.24,
      cold: 0.18,
      rough: { oxide: 0.64, bare: 0.4 },
      metal: { oxide: 0.33, bare: 0.92 },
    },
    root: {
      skin: linear("#43423f"),
      skinPale: linear("#544c44"),
      base: 0.22,
      share: 0.74,
      brushed: 0.5,
      hollow: 0.36,
      warm: 0.14,
      cold: 0.18,
      rough: { oxide: 0.68, bare: 0.48 },
      metal: { oxide: 0.2, bare: 0.8 },
    },
    slag: {
      dark: linear("#1c1815"),
      pale: linear("#2f241a"),
      bias: 0.08,
      flake: [1.9, 1.1],
      edge: 0.26,
      thickness: 0.15,
      toe: 1,
      hollow: 1.8,
      rough: 0.28,
    },
  },
  "135": {
    cap: {
      skin: linear("#5b5046"),
      skinPale: linear("#716353"),
      base: 0.45,
      share: 1,
      brushed: 1,
      hollow: 0.4,
      warm: 0.5,
      cold: 0.2,
      rough: { oxide: 0.5, bare: 0.29 },
      metal: { oxide: 0.5, bare: 0.96 },
    },
    root: {
      skin: linear("#4a433c"),
      skinPale: linear("#5c5145"),
      base: 0.28,
      share: 0.8,
      brushed: 0.5,
      hollow: 0.34,
      warm: 0.34,
      cold: 0.2,
      rough: { oxide: 0.58, bare: 0.4 },
      metal: { oxide: 0.34, bare: 0.88 },
    },
    slag: {
      dark: linear("#33261a"),
      pale: linear("#6b5437"),
      bias: 0.34,
      flake: [1.05, 0.75],
      edge: 0.16,
      thickness: 0.12,
      toe: 0.8,
      hollow: 0.9,
      rough: 0.12,
    },
  },
  "136": {
    cap: {
      skin: linear("#514f4c"),
      skinPale: linear("#645f57"),
      base: 0.42,
      share: 0.97,
      brushed: 0.9,
      hollow: 0.42,
      warm: 0.26,
      cold: 0.24,
      rough: { oxide: 0.54, bare: 0.4 },
      metal: { oxide: 0.46, bare: 0.9 },
    },
    root: {
      skin: linear("#424140"),
      skinPale: linear("#544d45"),
      base: 0.24,
      share: 0.74,
      brushed: 0.5,
      hollow: 0.34,
      warm: 0.2,
      cold: 0.2,
      rough: { oxide: 0.6, bare: 0.46 },
      metal: { oxide: 0.3, bare: 0.84 },
    },
    slag: {
      dark: linear("#463d33"),
      pale: linear("#746656"),
      bias: 0.2,
      flake: [3.2, 1.9],
      edge: 0.15,
      thickness: 0.11,
      toe: 1.1,
      hollow: 1.2,
      rough: 0.62,
    },
  },
  "141": {
    cap: {
      skin: linear("#6d6a65"),
      skinPale: linear("#857b68"),
      base: 0.6,
      share: 1,
      brushed: 0.8,
      hollow: 0.34,
      warm: 0.45,
      cold: 0.4,
      rough: { oxide: 0.4, bare: 0.24 },
      metal: { oxide: 0.78, bare: 0.97 },
    },
    root: {
      skin: linear("#64625f"),
      skinPale: linear("#7b715f"),
      base: 0.52,
      share: 0.97,
      brushed: 0.4,
      hollow: 0.28,
      warm: 0.4,
      cold: 0.36,
      rough: { oxide: 0.42, bare: 0.26 },
      metal: { oxide: 0.7, bare: 0.96 },
    },
    slag: null,
  },
};
