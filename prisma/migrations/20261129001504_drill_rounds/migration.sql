-- CreateTable
CREATE TABLE "DrillRound" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "userId" TEXT NOT NULL,
    "drill" TEXT NOT NULL,
    "gauges" JSONB NOT NULL,
    "asked" INTEGER NOT NULL,
    "right" INTEGER NOT NULL,
    "medianError" REAL,
    "seconds" INTEGER NOT NULL,
    "finishedAt" DATETIME NOT NULL,
    CONSTRAINT "DrillRound_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "DrillRound_userId_drill_finishedAt_idx" ON "DrillRound"("userId", "drill", "finishedAt");


