-- CreateIndex
CREATE INDEX "Specimen_state_createdAt_idx" ON "Specimen"("state", "createdAt");


