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
-- both faces count together now: what was asked of either is never asked more of
INSERT INTO "new_Practice" ("passMark", "generatorVersion", "handedInAt", "id", "report", "savedAt", "sequence", "specimenId", "startedAt", "state", "truth", "userId", "windowId") SELECT min("capPassMark", "rootPassMark"), "generatorVersion", "handedInAt", "id", "report", "savedAt", "sequence", "specimenId", "startedAt", "state", "truth", "userId", "windowId" FROM "Practice";
DROP TABLE "Practice";
ALTER TABLE "new_Practice" RENAME TO "Practice";
CREATE INDEX "Practice_userId_startedAt_idx" ON "Practice"("userId", "startedAt");
CREATE INDEX "Practice_specimenId_idx" ON "Practice"("specimenId");
CREATE TABLE "new_Specimen" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "kind" TEXT NOT NULL DEFAULT 'butt',
    "seed" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "isReserved" BOOLEAN NOT NULL DEFAULT false,
    "stage" TEXT NOT NULL DEFAULT '',
    "generatorVersion" TEXT,
    "truth" JSONB,
    "ends" JSONB,
    "createdAt" DATETIME NOT NULL
);
INSERT INTO "new_Specimen" ("createdAt", "generatorVersion", "id", "isReserved", "seed", "stage", "state", "truth") SELECT "createdAt", "generatorVersion", "id", "isReserved", "seed", "stage", "state", "truth" FROM "Specimen";
DROP TABLE "Specimen";
ALTER TABLE "new_Specimen" RENAME TO "Specimen";
CREATE UNIQUE INDEX "Specimen_seed_key" ON "Specimen"("seed");
CREATE INDEX "Specimen_kind_state_createdAt_idx" ON "Specimen"("kind", "state", "createdAt");
CREATE TABLE "new_Workshop" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "allowsOwnAccounts" BOOLEAN NOT NULL DEFAULT true,
    "platePassMark" REAL NOT NULL DEFAULT 70,
    "filletPassMark" REAL NOT NULL DEFAULT 70,
    "createdAt" DATETIME NOT NULL
);
INSERT INTO "new_Workshop" ("platePassMark", "allowsOwnAccounts", "createdAt", "id", "name") SELECT min("capPassMark", "rootPassMark"), "allowsOwnAccounts", "createdAt", "id", "name" FROM "Workshop";
DROP TABLE "Workshop";
ALTER TABLE "new_Workshop" RENAME TO "Workshop";
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;


