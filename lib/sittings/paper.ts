import { z } from "zod";
import { IMPERFECTION_TYPES, imperfection } from "../imperfections";
import { marksSchema, type PartWeights, SECTION_PARTS, SECTIONS, type Section, type SectionPart } from "../results";
import { type JointPosition, POSITION_NAMES, PROCESSES, type Process } from "../weld";
import { fields, oneOf, text, whole } from "./field-errors";
import { FACES_OF, PIECE_CHOICES } from "./piece-choices";

/** "own": every learner another, equally hard piece; "same": one piece for all. */
export const FORMS = ["own", "same"] as const;
/** When a learner sees the mark sheet: as soon as the section is closed, or when the tutor releases the sitting. */
export const FEEDBACKS = ["at-once", "on-release"] as const;
/** Whether the table of criteria may be read at the bench. */
export const CRITERIA_TABLES = ["open", "closed"] as const;

/** Stands for whatever comes when a piece is made. */
export const DRAWN = "drawn";

const yesNo = (field: string) => z.boolean({ error: `${field}: true or false` });

const ALL_POSITIONS = Object.keys(POSITION_NAMES) as JointPosition[];

const typeSchema = (field: string) =>
  z.enum(IMPERFECTION_TYPES, { error: `${field}: types of the catalogue, such as surface-pore` });

/** Which types of imperfection a piece is to have. It tells what is on the piece: never to a learner before handing in. */
export const askedTypesSchema = z.strictObject(
  {
    /** Each of them comes at least once, as far as such a piece can have it beside the others. */
    includes: z.array(typeSchema("includes"), { error: "includes: a list of types" }).readonly(),
    /** What alone comes where the blueprint leaves the kind open; what comes by itself, such as plates that stand apart, may come besides. */
    among: z.union([z.literal("any"), z.array(typeSchema("among")).readonly()], {
      error: "among: any, or a list of types",
    }),
  },
  fields("types", "includes, among"),
);
export type AskedTypes = Readonly<z.infer<typeof askedTypesSchema>>;

/** What a paper fixes of a section's piece. */
export const paperPieceSchema = z.strictObject(
  {
    blueprint: z.string({ error: "blueprint: the name of a blueprint" }),
    process: z.enum([DRAWN, ...PROCESSES], oneOf("process", [DRAWN, ...PROCESSES])),
    position: z.enum([DRAWN, ...ALL_POSITIONS], oneOf("position", [DRAWN, ...ALL_POSITIONS])),
    /** mm, of the plate or of a fillet's base plate. */
    thickness: z.union([z.literal(DRAWN), z.int()], { error: "thickness: drawn, or whole mm" }),
    /** Which types come; left out, whatever the blueprint gives. */
    types: askedTypesSchema.optional(),
  },
  fields("piece", "blueprint, process, position, thickness, types"),
);
export type PaperPiece = Readonly<z.infer<typeof paperPieceSchema>>;

const WEIGHT_MOST = 1000;
const weightSchema = (part: SectionPart) => {
  const error = `${part}: 0 to ${WEIGHT_MOST}`;
  return z.number({ error }).min(0, error).max(WEIGHT_MOST, error);
};
const weightsSchema: z.ZodType<PartWeights> = z
  .strictObject(
    Object.fromEntries(SECTION_PARTS.map((part) => [part, weightSchema(part)])) as Record<SectionPart, z.ZodNumber>,
    fields("weights", SECTION_PARTS.join(", ")),
  )
  .refine((weights) => Object.values(weights).some((weight) => weight > 0), {
    error: "weights: at least one part above 0",
  });

/** 0 for what is no part of a section. */
const weightOf = (weights: PartWeights, part: string): number =>
  Object.entries(weights).find(([name]) => name === part)?.[1] ?? 0;

const aidsSchema = z.strictObject(
  {
    criteriaTable: z.enum(CRITERIA_TABLES, oneOf("criteriaTable", CRITERIA_TABLES)),
    lens: yesNo("lens"),
    /** "What does it read?" explains the scale of a gauge as it stands. */
    asksReading: yesNo("asksReading"),
  },
  fields("aids", "criteriaTable, lens, asksReading"),
);

/** Longest name of a paper, characters. */
export const PAPER_NAME_MOST = 80;
export const MINUTES = { least: 5, most: 480 } as const;
/** So many kinds of question there are to draw on any piece. */
const QUESTIONS_MOST = 20;
/** What a paper could ask for before. */
const QUESTIONS_ONCE = 40;

/** What is wrong with the types that a section's piece is to have, by field. */
function* typeProblems(
  section: Section,
  blueprint: string,
  { includes, among }: AskedTypes,
): Generator<["includes" | "among", string]> {
  const faces = FACES_OF[section];
  for (const [field, types] of [
    ["includes", includes],
    ["among", among === "any" ? [] : among],
  ] as const) {
    const stray = types.find((type) => !imperfection(type).faces.some((face) => faces.includes(face)));
    if (stray) yield [field, `${field}: types that come in the section ${section}, which ${stray} does not`];
    const twice = types.find((type, n) => types.indexOf(type) < n);
    if (twice) yield [field, `${field}: each once; ${twice} stands there already`];
  }
  const choice = PIECE_CHOICES[section].blueprints[blueprint];
  if (choice && includes.length > choice.indications) {
    yield ["includes", `includes: at most ${choice.indications} types with ${blueprint}`];
  }
}

const SECTION_FIELDS = "section, minutes, passMark, weights, piece, criteriaId, questionCount, aids";
const PASS_MARK = "passMark: 0 to 100, at most one decimal, for example 69.5";

const sectionWith = (questionsMost: number) =>
  z
    .strictObject(
      {
        section: z.enum(SECTIONS, oneOf("section", SECTIONS)),
        /** Time at the piece, before any learner's factor. */
        minutes: whole("minutes", MINUTES.least, MINUTES.most),
        passMark: z
          .number({ error: PASS_MARK })
          .refine((mark) => marksSchema.safeParse(mark).success, { error: PASS_MARK }),
        weights: weightsSchema,
        piece: paperPieceSchema,
        /** Of the criteria in force; their value is put into the sitting on the server. */
        criteriaId: z
          .string({ error: "criteriaId: the id of a set of criteria" })
          .regex(
            /^[a-z0-9.-]{1,40}$/,
            "criteriaId: the id of a set of criteria, small letters, digits, dots and hyphens",
          ),
        questionCount: whole("questionCount", 0, questionsMost),
        aids: aidsSchema,
      },
      fields("section", SECTION_FIELDS),
    )
    .superRefine(({ section, piece, weights, questionCount }, context) => {
      const fail = (path: string[], message: string) => context.addIssue({ code: "custom", path, message });
      const choices = PIECE_CHOICES[section];
      const among = (field: "process" | "position", all: readonly (Process | JointPosition)[]) => {
        const chosen = piece[field];
        if (chosen !== DRAWN && !all.includes(chosen)) {
          fail(["piece", field], `${field}: ${DRAWN}, ${all.join(", ")} in the section ${section}`);
        }
      };
      among("process", choices.processes);
      among("position", choices.positions);
      const names = Object.keys(choices.blueprints);
      if (!names.includes(piece.blueprint)) {
        fail(["piece", "blueprint"], `blueprint: one of ${names.join(", ")} in the section ${section}`);
      } else if (piece.thickness !== DRAWN) {
        const [least, most] = choices.blueprints[piece.blueprint].thickness;
        if (piece.thickness < least || piece.thickness > most) {
          fail(["piece", "thickness"], `thickness: ${DRAWN}, or ${least} to ${most} mm for ${piece.blueprint}`);
        }
      }
      if (piece.types) {
        for (const [field, message] of typeProblems(section, piece.blueprint, piece.types)) {
          fail(["piece", "types", field], message);
        }
      }
      if (questionCount === 0 && weightOf(weights, "questions") > 0) {
        fail(
          ["questionCount"],
          "questionCount: at least 1 where questions carry weight, or give questions the weight 0",
        );
      }
    });
export type PaperSection = z.infer<ReturnType<typeof sectionWith>>;

const paperWith = (questionsMost: number) =>
  z
    .strictObject(
      {
        version: z.literal(1, { error: "version: 1" }),
        name: text("name", PAPER_NAME_MOST),
        /** In the order in which they are listed; a learner may sit them in any order. */
        sections: z
          .array(sectionWith(questionsMost), { error: "sections: a list" })
          .min(1, "sections: at least one")
          .max(SECTIONS.length, `sections: at most ${SECTIONS.length}, each once`),
        forms: z.enum(FORMS, oneOf("forms", FORMS)),
        feedback: z.enum(FEEDBACKS, oneOf("feedback", FEEDBACKS)),
        /** A section just short of its pass mark gets one parallel piece at once, and the two marks are averaged. */
        borderlinePiece: yesNo("borderlinePiece"),
        /** Rest between two sections; it lengthens the time in which the paper is sat, and nobody has to take it. */
        breakMinutes: whole("breakMinutes", 0, 120),
        /** How often a failed section may be sat again, alone, before the whole paper is due again. */
        resits: whole("resits", 0, 5),
      },
      fields("paper", "version, name, sections, forms, feedback, borderlinePiece, breakMinutes, resits"),
    )
    .superRefine(({ sections, forms, feedback }, context) => {
      sections.forEach(({ section }, n) => {
        if (sections.slice(0, n).some((other) => other.section === section)) {
          context.addIssue({
            code: "custom",
            path: ["sections", n, "section"],
            message: `section: each once; ${section} stands there already`,
          });
        }
      });
      if (forms === "same" && feedback === "at-once") {
        context.addIssue({
          code: "custom",
          path: ["feedback"],
          message:
            "feedback: on-release where all sit the same piece, since whoever is done first would see what is on it",
        });
      }
    });

/**
 * A paper as a tutor writes it. Every message names its field and says what would be right; paths lead
 * to the field (`sections`, 0, `minutes`).
 */
export const paperSchema = paperWith(QUESTIONS_MOST);
/** A paper as it is stored: what was saved while it could ask for more questions can be read and sat still. */
export const storedPaperSchema = paperWith(QUESTIONS_ONCE);
export type Paper = z.infer<typeof paperSchema>;
