import type { Provenance } from '../study/provenance.js';
import type { Study } from '../study/study.js';

/** The history of one value of a study. */
export function historyOf({ provenance }: Study, path: string): Provenance | undefined {
  return provenance.find((entry) => entry.path === path);
}

/** The study with the history of one value replaced, so that its spread comes along. */
export function withHistory(study: Study, path: string, history: Provenance | undefined): Study {
  const others = study.provenance.filter((entry) => entry.path !== path);
  return { ...study, provenance: history === undefined ? others : [...others, history] };
}

/**
 * The study with the histories below a path as another study has them: what is exchanged as a whole is drawn from
 * its own spreads.
 * @param below with its last dot: `candidates.worm-a.`
 */
export function withHistories(study: Study, other: Study, below: string): Study {
  const isBelow = ({ path }: Provenance) => path.startsWith(below);
  const others = study.provenance.filter((entry) => !isBelow(entry));
  return { ...study, provenance: [...others, ...other.provenance.filter(isBelow)] };
}

/** The study with values that are the same in another one known as well, or as poorly, as there. */
export function withSpreads(study: Study, other: Study, below: string): Study {
  return respread(study, other, below).reduce(
    (changed, history) => withHistory(changed, history.path, history),
    study,
  );
}

/** Histories, as later, of values that stayed and are known better or worse. */
export function respread(earlier: Study, later: Study, below = ''): Provenance[] {
  return later.provenance.filter(({ path, value, spread }) => {
    // Readings count as a whole, and of the packs only the chosen one, under a path of its own.
    if (!path.startsWith(below) || /^(packs|measured)\./.test(path)) return false;
    const before = historyOf(earlier, path);
    if (before === undefined || before.value !== value) return false;
    return JSON.stringify(before.spread) !== JSON.stringify(spread);
  });
}
