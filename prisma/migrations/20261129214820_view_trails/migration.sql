-- CreateTable
CREATE TABLE "ViewTrail" (
    "practiceId" TEXT NOT NULL,
    "windowId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "trail" JSONB NOT NULL,

    PRIMARY KEY ("practiceId", "windowId"),
    CONSTRAINT "ViewTrail_practiceId_fkey" FOREIGN KEY ("practiceId") REFERENCES "Practice" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);


