-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Practice" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "userId" TEXT NOT NULL,
    "specimenId" TEXT NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'open',
    "section" TEXT NOT NULL DEFAULT 'plate',
    "passMark" REAL NOT NULL DEFAULT 70,
    "criteria" JSONB,
    "book" TEXT NOT NULL DEFAULT 'open',
    "report" JSONB NOT NULL,
    "sequence" INTEGER NOT NULL DEFAULT 0,
    "windowId" TEXT,
    "startedAt" DATETIME NOT NULL,
    "savedAt" DATETIME,
    "handedInAt" DATETIME,
    "truth" JSONB,
    "generatorVersion" TEXT,
    CONSTRAINT "Practice_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Practice_specimenId_fkey" FOREIGN KEY ("specimenId") REFERENCES "Specimen" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_Practice" ("generatorVersion", "handedInAt", "id", "passMark", "report", "savedAt", "section", "sequence", "specimenId", "startedAt", "state", "truth", "userId", "windowId") SELECT "generatorVersion", "handedInAt", "id", "passMark", "report", "savedAt", "section", "sequence", "specimenId", "startedAt", "state", "truth", "userId", "windowId" FROM "Practice";
DROP TABLE "Practice";
ALTER TABLE "new_Practice" RENAME TO "Practice";
CREATE INDEX "Practice_userId_startedAt_idx" ON "Practice"("userId", "startedAt");
CREATE INDEX "Practice_specimenId_idx" ON "Practice"("specimenId");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;


