/** So many placements in all are checked against plain loops; `npm run bench -- --long` asks for 10,000. */
export const PLACEMENTS = Number(process.env.PLACEMENTS ?? 2000);

/** The part of them that is `of10000` of every 10,000. */
export const partOf = (of10000: number): number => Math.round((of10000 * PLACEMENTS) / 10_000);
