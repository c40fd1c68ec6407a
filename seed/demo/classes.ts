import type { ImperfectionType } from "@/lib/imperfections";
import type { Skill } from "./inspector/skill";

// Invented people, and how well they see. What a tutor should be able to find out: the morning class overlooks what is hollow on
// the root, root concavity and shrinkage grooves at its toes; the evening class takes look-alikes for each other and reads
// sizes too high. Inside each class people differ, and everybody learns.

export interface DemoLearner {
  readonly name: string;
  readonly signInName: string;
  readonly skill: Skill;
  /** What the time of a section is multiplied by; 1 for most. */
  readonly factor: number;
}

export interface DemoClass {
  readonly key: "morning" | "evening";
  readonly name: string;
  readonly notes: string;
  /** Sign-in names of its tutors, whoever made it first. */
  readonly tutors: readonly string[];
  readonly learners: readonly DemoLearner[];
}

const HOLLOW_ROOTS: Readonly<Partial<Record<ImperfectionType, number>>> = {
  "root-concavity": -2.4,
  "shrinkage-groove": -2.2,
};

const MORNING: Omit<Skill, "ability" | "gain" | "falseCalls"> = {
  offsets: HOLLOW_ROOTS,
  confusion: 0.06,
  sizeBias: 0.02,
  sizeScatter: 0.15,
  placeScatter: 1.6,
  measuring: 0.85,
  knowledge: 0.8,
  sentencing: 0.93,
};

const EVENING: Omit<Skill, "ability" | "gain" | "falseCalls"> = {
  offsets: {},
  confusion: 0.3,
  sizeBias: 0.3,
  sizeScatter: 0.2,
  placeScatter: 2,
  measuring: 1,
  knowledge: 0.72,
  sentencing: 0.9,
};

/** Ability at the beginning, what is gained, false calls a piece, extra time. */
type Row = readonly [
  name: string,
  signInName: string,
  ability: number,
  gain: number,
  falseCalls: number,
  factor?: number,
];

/** Whoever sees more also measures better and knows more, within bounds. */
const withAbility = ({ measuring, knowledge }: typeof MORNING, ability: number) => ({
  measuring: measuring * (1.45 - 0.2 * ability),
  knowledge: Math.min(0.95, knowledge + 0.06 * (ability - 2)),
});

const learnersOf = (common: typeof MORNING, rows: readonly Row[]): readonly DemoLearner[] =>
  rows.map(([name, signInName, ability, gain, falseCalls, factor = 1]) => ({
    name,
    signInName,
    factor,
    skill: { ...common, ability, gain, falseCalls, ...withAbility(common, ability) },
  }));

export type DemoClasses = readonly [morning: DemoClass, evening: DemoClass];

export const DEMO_CLASSES: DemoClasses = [
  {
    key: "morning",
    name: "Morning inspectors",
    notes: "Bench room 2, weekdays. Bring own torch if you have one.",
    tutors: ["maren"],
    learners: learnersOf(MORNING, [
      ["Ilse Tamm", "ilse", 2.3, 1.2, 0.5],
      ["Bruno Katz", "bruno", 0.9, 1.3, 1.4],
      ["Aino Verma", "aino", 2.9, 0.9, 0.3],
      ["Cedric Nwosu", "cedric", 1.9, 1.1, 0.7],
      ["Dagny Flores", "dagny", 1.5, 1.6, 0.9],
      ["Emre Halloran", "emre", 2.6, 0.7, 0.6, 1.25],
      ["Fumi Sandoval", "fumi", 2.1, 1.2, 0.4],
      ["Greta Mbeki", "greta", 0.6, 1.0, 1.8],
      ["Hamid Soler", "hamid", 1.7, 1.4, 1.0],
      ["Irena Castellan", "irena", 3.2, 0.6, 0.2],
      ["Joost Palmero", "joost", 2.4, 0.9, 0.8],
      ["Kaia Ostrander", "kaia", 1.2, 1.5, 1.1, 1.5],
    ]),
  },
  {
    key: "evening",
    name: "Evening course",
    notes: "Two evenings a week, mixed trades.",
    tutors: ["odile", "maren"],
    learners: learnersOf(EVENING, [
      ["Sana Lindqvist", "sana", 2.5, 1.1, 0.6],
      ["Tomo Reyes", "tomo", 1.7, 1.4, 1.2],
      ["Lazar Quint", "lazar", 2.2, 1.0, 0.7],
      ["Mirela Aydin", "mirela", 3.0, 0.7, 0.4],
      ["Nuria Hagen", "nuria", 1.1, 1.5, 1.3],
      ["Orsolya Pike", "orsolya", 2.0, 1.2, 0.9],
      ["Pavel Iriarte", "pavel", 2.7, 0.8, 0.5],
      ["Quirin Dalgaard", "quirin", 1.6, 1.1, 1.5],
      ["Rosa Thackeray", "rosa", 2.3, 1.2, 0.6, 1.25],
      ["Stellan Okoro", "stellan", 0.8, 1.2, 1.6],
      ["Tamsin Varga", "tamsin", 2.6, 0.9, 0.5],
      ["Uri Marchetti", "uri", 1.9, 1.3, 1.0],
    ]),
  },
];
