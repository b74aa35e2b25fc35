/**
 * Number of single-character insertions, deletions, replacements and swaps of neighbours between two words.
 */
export function editDistance(from: string, to: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: to.length + 1 }, (_, index) => index);
  for (let i = 1; i <= from.length; i++) {
    const current = [i];
    for (let j = 1; j <= to.length; j++) {
      const same = from[i - 1] === to[j - 1];
      let cost = Math.min(last[j]! + 1, current[j - 1]! + 1, last[j - 1]! + (same ? 0 : 1));
      const swapped = i > 1 && j > 1 && from[i - 1] === to[j - 2] && from[i - 2] === to[j - 1];
      if (swapped) cost = Math.min(cost, beforeLast[j - 2]! + 1);
      current.push(cost);
    }
    beforeLast = last;
    last = current;
  }
  return last[to.length]!;
}

/**
 * The valid name closest to what was written, or null when none is close enough to be meant.
 * Case, spaces, hyphens and underscores do not count. A name that starts or ends with the word counts as close, and
 * words that begin alike may differ more.
 *
 * @param written - the unknown name; very long names are never matched
 * @param names - the names that would be valid
 */
export function nearestName(written: string, names: readonly string[]): string | null {
  const wanted = plain(written);
  if (wanted === '' || wanted.length > 60) return null;
  let best: string | null = null;
  let bestDistance = Number.POSITIVE_INFINITY;
  for (const name of names) {
    const candidate = plain(name);
    const part = wanted.length >= 4 && (candidate.endsWith(wanted) || candidate.startsWith(wanted));
    const distance = part ? Math.min(1.2, editDistance(wanted, candidate)) : editDistance(wanted, candidate);
    const share = wanted.slice(0, 4) === candidate.slice(0, 4) ? 0.6 : 0.4;
    if (distance < bestDistance && distance <= Math.max(1.2, Math.floor(wanted.length * share))) {
      best = name;
      bestDistance = distance;
    }
  }
  return best;
}

function plain(name: string): string {
  return name.toLowerCase().replace(/[\s_-]+/g, '');
}
