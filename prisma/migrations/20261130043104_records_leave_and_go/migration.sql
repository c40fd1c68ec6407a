-- AlterTable
ALTER TABLE "Sitting" ADD COLUMN "erased" JSONB;

-- CreateTable
CREATE TABLE "ErasureRequest" (
    "userId" TEXT NOT NULL PRIMARY KEY,
    "askedAt" DATETIME NOT NULL,
    CONSTRAINT "ErasureRequest_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "PooledSection" (
    "section" TEXT NOT NULL PRIMARY KEY,
    "value" JSONB NOT NULL
);

-- CreateTable
CREATE TABLE "PooledType" (
    "type" TEXT NOT NULL PRIMARY KEY,
    "value" JSONB NOT NULL
);

-- CreateTable
CREATE TABLE "PooledQuestion" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "value" JSONB NOT NULL
);

-- CreateTable
CREATE TABLE "FileCare" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "dirtySince" DATETIME
);

-- CreateTable
CREATE TABLE "XapiStatement" (
    "number" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "id" TEXT NOT NULL,
    "userId" TEXT,
    "statement" JSONB NOT NULL,
    "madeAt" DATETIME NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'waiting',
    "reason" TEXT,
    CONSTRAINT "XapiStatement_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "XapiDelivery" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "sent" INTEGER NOT NULL DEFAULT 0,
    "lastSuccessAt" DATETIME,
    "lastErrorAt" DATETIME,
    "lastError" TEXT,
    "failures" INTEGER NOT NULL DEFAULT 0,
    "nextTryAt" DATETIME
);

-- CreateIndex
CREATE UNIQUE INDEX "XapiStatement_id_key" ON "XapiStatement"("id");

-- CreateIndex
CREATE INDEX "XapiStatement_state_number_idx" ON "XapiStatement"("state", "number");

-- CreateIndex
CREATE INDEX "XapiStatement_userId_idx" ON "XapiStatement"("userId");
