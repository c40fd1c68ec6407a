-- AlterTable
ALTER TABLE "Practice" ADD COLUMN "windowId" TEXT;


