-- AlterTable
ALTER TABLE "LearnerProgress" ADD COLUMN "learner" JSONB;

-- CreateTable
CREATE TABLE "NextPiece" (
    "specimenId" TEXT NOT NULL PRIMARY KEY,
    "userId" TEXT NOT NULL,
    "section" TEXT NOT NULL,
    "waits" BOOLEAN,
    "chosenAt" DATETIME NOT NULL,
    "revision" INTEGER NOT NULL,
    "learner" JSONB NOT NULL,
    CONSTRAINT "NextPiece_specimenId_fkey" FOREIGN KEY ("specimenId") REFERENCES "Specimen" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "NextPiece_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateIndex
CREATE UNIQUE INDEX "NextPiece_userId_section_waits_key" ON "NextPiece"("userId", "section", "waits");


