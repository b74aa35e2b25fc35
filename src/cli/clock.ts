/**
 * Date that a report carries: the study's own, so that the same study gives the same bytes; for a study without one,
 * the moment in SOURCE_DATE_EPOCH, so that builds repeat; else now.
 * @param studyDate ISO date, or empty
 * @returns ISO date-time in UTC
 */
export function reportDate(env: NodeJS.ProcessEnv, studyDate: string, now: () => Date): string {
  const written = new Date(studyDate);
  if (studyDate !== '' && !Number.isNaN(written.getTime())) return iso(written);
  const epoch = Number(env.SOURCE_DATE_EPOCH);
  if (env.SOURCE_DATE_EPOCH && Number.isSafeInteger(epoch) && epoch >= 0) return iso(new Date(epoch * 1000));
  return iso(now());
}

function iso(date: Date): string {
  return `${date.toISOString().slice(0, 19)}Z`;
}
