-- CreateTable
CREATE TABLE "EyeRound" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "userId" TEXT NOT NULL,
    "drill" TEXT NOT NULL,
    "naming" TEXT NOT NULL,
    "isTimed" BOOLEAN NOT NULL,
    "setDrillId" TEXT,
    "begunAt" DATETIME NOT NULL,
    "finishedAt" DATETIME,
    CONSTRAINT "EyeRound_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "EyeRound_setDrillId_fkey" FOREIGN KEY ("setDrillId") REFERENCES "SetDrill" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "EyeTask" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "roundId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "content" JSONB NOT NULL,
    "answer" JSONB,
    "answeredAt" DATETIME,
    "isRight" BOOLEAN,
    "about" TEXT,
    "error" REAL,
    CONSTRAINT "EyeTask_roundId_fkey" FOREIGN KEY ("roundId") REFERENCES "EyeRound" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "SetDrill" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "groupId" TEXT NOT NULL,
    "setById" TEXT,
    "drill" TEXT NOT NULL,
    "types" JSONB NOT NULL,
    "setAt" DATETIME NOT NULL,
    "withdrawnAt" DATETIME,
    CONSTRAINT "SetDrill_groupId_fkey" FOREIGN KEY ("groupId") REFERENCES "ClassGroup" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "SetDrill_setById_fkey" FOREIGN KEY ("setById") REFERENCES "User" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Specimen" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "kind" TEXT NOT NULL DEFAULT 'butt',
    "seed" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "isReserved" BOOLEAN NOT NULL DEFAULT false,
    "isAwaited" BOOLEAN NOT NULL DEFAULT false,
    "isForDrills" BOOLEAN NOT NULL DEFAULT false,
    "asked" JSONB,
    "stage" TEXT NOT NULL DEFAULT '',
    "generatorVersion" TEXT,
    "truth" JSONB,
    "ends" JSONB,
    "createdAt" DATETIME NOT NULL
);
INSERT INTO "new_Specimen" ("asked", "createdAt", "ends", "generatorVersion", "id", "isAwaited", "isReserved", "kind", "seed", "stage", "state", "truth") SELECT "asked", "createdAt", "ends", "generatorVersion", "id", "isAwaited", "isReserved", "kind", "seed", "stage", "state", "truth" FROM "Specimen";
DROP TABLE "Specimen";
ALTER TABLE "new_Specimen" RENAME TO "Specimen";
CREATE UNIQUE INDEX "Specimen_seed_key" ON "Specimen"("seed");
CREATE INDEX "Specimen_kind_state_createdAt_idx" ON "Specimen"("kind", "state", "createdAt");
CREATE INDEX "Specimen_isForDrills_idx" ON "Specimen"("isForDrills");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- CreateIndex
CREATE INDEX "EyeRound_userId_begunAt_idx" ON "EyeRound"("userId", "begunAt");

-- CreateIndex
CREATE INDEX "EyeRound_setDrillId_idx" ON "EyeRound"("setDrillId");

-- CreateIndex
CREATE UNIQUE INDEX "EyeTask_roundId_number_key" ON "EyeTask"("roundId", "number");

-- CreateIndex
CREATE INDEX "SetDrill_groupId_setAt_idx" ON "SetDrill"("groupId", "setAt");


