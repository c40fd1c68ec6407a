-- CreateTable
CREATE TABLE "DemoHistory" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "openedAt" DATETIME NOT NULL,
    "done" INTEGER NOT NULL DEFAULT 0,
    "total" INTEGER NOT NULL DEFAULT 0,
    "heldSittingId" TEXT,
    "finishedAt" DATETIME
);


