"use client";
import type { ReactNode } from "react";
import { FACE_NAMES } from "@/app/_ui/section-names";
import { CAUTION } from "@/lib/criteria";
import type { SectionResult, SentenceLine, SentencesResult } from "@/lib/results";
import { type LineId, lineId } from "@/lib/review";
import { truthTitle, vagueStretch } from "./line-words";
import { SentenceItem } from "./sentence-item";
import type { TruthView } from "./sheet-view";

interface SentenceListProps {
  readonly section: SectionResult["section"];
  readonly part: SentencesResult;
  readonly truths: readonly TruthView[];
  readonly chosen: SentenceLine | null;
  isCovered(truthId: string | null): boolean;
  onChoose(line: SentenceLine): void;
  noteOf(id: LineId): ReactNode;
}

/** The sentence on each imperfection, then the one on the piece, by the criteria that were in force. */
export function SentenceList({ section, part, truths, chosen, isCovered, onChoose, noteOf }: SentenceListProps) {
  const { criteria, lines, piece } = part;
  const faceOf = ({ truthId }: SentenceLine) => truths.find(({ id }) => id === truthId)?.face;
  // misses are counted on each face, as among the indications
  const missNumber = (line: SentenceLine) =>
    lines.filter((other) => isCovered(other.truthId) && faceOf(other) === faceOf(line)).indexOf(line) + 1;
  const titleOf = (line: SentenceLine): string => {
    const truth = truths.find(({ id }) => id === line.truthId);
    if (!truth) return "An imperfection";
    return isCovered(line.truthId)
      ? `${section === "plate" ? `${FACE_NAMES[truth.face]}: miss` : "Miss"} ${missNumber(line)}, ${vagueStretch(truth).words}`
      : truthTitle([truth]);
  };
  return (
    <>
      <h3 className="break-after-avoid border-line border-t px-3 pt-4 font-semibold">Sentences</h3>
      <p className="px-3 pb-2 text-ink-2 text-sm">
        By {criteria.name} ({criteria.edition}).
      </p>
      <ol>
        {lines.map((line, n) => (
          <SentenceItem
            key={line.truthId}
            line={line}
            title={titleOf(line)}
            isPiece={false}
            isChosen={line === chosen}
            isCovered={isCovered(line.truthId)}
            onChoose={() => onChoose(line)}
            note={noteOf(lineId("sentences", n))}
          />
        ))}
        <SentenceItem
          line={piece}
          title={`The ${section === "fillet" ? "weld" : "plate"} as a whole`}
          isPiece
          isChosen={piece === chosen}
          isCovered={isCovered(piece.truthId)}
          onChoose={() => onChoose(piece)}
          note={noteOf(lineId("sentences", lines.length))}
        />
      </ol>
      <p className="border-line border-t px-3 py-2 text-ink-2 text-xs">{CAUTION}</p>
    </>
  );
}
