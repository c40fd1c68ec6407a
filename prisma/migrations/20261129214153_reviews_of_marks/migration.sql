-- CreateTable
CREATE TABLE "ReviewAct" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "attemptId" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    "actorId" TEXT NOT NULL,
    "actorName" TEXT NOT NULL,
    "content" JSONB NOT NULL,
    "reason" TEXT NOT NULL,
    CONSTRAINT "ReviewAct_attemptId_fkey" FOREIGN KEY ("attemptId") REFERENCES "Attempt" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Attempt" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "practiceId" TEXT NOT NULL,
    "section" TEXT NOT NULL,
    "passMark" REAL NOT NULL,
    "markThousandths" INTEGER NOT NULL,
    "isPassed" BOOLEAN NOT NULL,
    "ruleVersion" TEXT NOT NULL,
    "result" JSONB NOT NULL,
    "handedInAt" DATETIME NOT NULL,
    "reviewedThousandths" INTEGER,
    "reviewedIsPassed" BOOLEAN,
    "reviewedAt" DATETIME,
    "reviewRevision" INTEGER NOT NULL DEFAULT 0,
    CONSTRAINT "Attempt_practiceId_fkey" FOREIGN KEY ("practiceId") REFERENCES "Practice" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);
INSERT INTO "new_Attempt" ("handedInAt", "id", "isPassed", "markThousandths", "passMark", "practiceId", "result", "ruleVersion", "section") SELECT "handedInAt", "id", "isPassed", "markThousandths", "passMark", "practiceId", "result", "ruleVersion", "section" FROM "Attempt";
DROP TABLE "Attempt";
ALTER TABLE "new_Attempt" RENAME TO "Attempt";
CREATE INDEX "Attempt_handedInAt_idx" ON "Attempt"("handedInAt");
CREATE UNIQUE INDEX "Attempt_practiceId_section_key" ON "Attempt"("practiceId", "section");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- CreateIndex
CREATE INDEX "ReviewAct_attemptId_idx" ON "ReviewAct"("attemptId");


