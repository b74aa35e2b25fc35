/** What a reader has set: steps of the criteria that differ from the study's own, and limits that are off. */
export interface View {
  steps: ReadonlyMap<string, string>;
  off: ReadonlySet<string>;
}

/** A view as the part of an address after `#`: `runtime=much&cost=none&off=noise`; empty for the study's own. */
export function addressOf({ steps, off }: View): string {
  return [...steps, ...[...off].map((id) => ['off', id] as const)].map((pair) => pair.join('=')).join('&');
}

/**
 * The view that an address names; null when it names none. What nobody knows in it is passed over.
 * @param known criteria, limits and steps of this page
 */
export function viewFrom(
  address: string,
  known: { criteria: readonly string[]; limits: readonly string[]; steps: readonly string[] },
): View | null {
  if (!address.includes('=')) return null;
  const steps = new Map<string, string>();
  const off = new Set<string>();
  for (const pair of address.replace(/^#/, '').split('&')) {
    const [name = '', value = ''] = pair.split('=');
    if (name === 'off' && known.limits.includes(value)) off.add(value);
    if (known.criteria.includes(name) && known.steps.includes(value)) steps.set(name, value);
  }
  return { steps, off };
}

/** The command that ranks with this view in a terminal. */
export function commandOf({ steps, off }: View): string {
  const changes = [
    ...[...steps].map(([id, step]) => ` --set ${id}.weight=${step}`),
    ...[...off].map((id) => ` --set ${id}.must=`),
  ];
  return `holdwright rank <study>${changes.join('')}`;
}
