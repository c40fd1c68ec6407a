-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_NextPiece" (
    "specimenId" TEXT NOT NULL PRIMARY KEY,
    "userId" TEXT NOT NULL,
    "section" TEXT NOT NULL,
    "waits" BOOLEAN,
    "chosenAt" DATETIME NOT NULL,
    "sections" INTEGER NOT NULL,
    "learner" JSONB NOT NULL,
    CONSTRAINT "NextPiece_specimenId_fkey" FOREIGN KEY ("specimenId") REFERENCES "Specimen" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "NextPiece_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);
-- what waits counts as chosen after everything of its kind that counts now
INSERT INTO "new_NextPiece" ("chosenAt", "learner", "section", "sections", "specimenId", "userId", "waits")
SELECT "chosenAt", "learner", "section", (
    SELECT COUNT(*) FROM "Attempt" a JOIN "Practice" p ON p."id" = a."practiceId"
        LEFT JOIN "SectionRun" r ON r."practiceId" = p."id" LEFT JOIN "Sitting" s ON s."id" = r."sittingId"
    WHERE p."userId" = "NextPiece"."userId" AND a."section" = "NextPiece"."section"
        AND (r."id" IS NULL OR (r."state" IN ('handedIn', 'expired') AND s."state" = 'released'))
), "specimenId", "userId", "waits" FROM "NextPiece";
DROP TABLE "NextPiece";
ALTER TABLE "new_NextPiece" RENAME TO "NextPiece";
CREATE UNIQUE INDEX "NextPiece_userId_section_waits_key" ON "NextPiece"("userId", "section", "waits");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;
