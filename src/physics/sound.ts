/** Distance that sound levels are compared at. */
export const comparedAtM = 1;

/**
 * Sound pressure level at the distance of comparison, from a level read at another: a small source in the open loses
 * 6 dB with each doubling of the distance. Walls add to what is heard far away, so a room makes the fall smaller;
 * nearer than the size of the drive itself the law no longer holds.
 * @param levelDb as read
 * @param distanceM from drive to microphone, above 0
 * @returns dB at 1 m
 * @source iso-9613-2, 7.1, geometrical divergence, from memory
 */
export function levelAtOneMetreDb(levelDb: number, distanceM: number): number {
  return levelDb + (20 * Math.log(distanceM / comparedAtM)) / Math.LN10;
}
