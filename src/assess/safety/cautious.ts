type Figure = number | null | undefined;

/** The largest of the figures there are; null without any. */
export function most(...figures: Figure[]): number | null {
  const there = known(figures);
  return there.length === 0 ? null : Math.max(...there);
}

/** The smallest of the figures there are; null without any. */
export function least(...figures: Figure[]): number | null {
  const there = known(figures);
  return there.length === 0 ? null : Math.min(...there);
}

function known(figures: Figure[]): number[] {
  return figures.filter((figure): figure is number => typeof figure === 'number');
}
