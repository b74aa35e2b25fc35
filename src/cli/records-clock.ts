import { reportDate } from './clock.js';
import type { Shell } from './shell.js';

/** The moment of filing in UTC; the one in SOURCE_DATE_EPOCH where it is set, so that runs repeat. */
export function moment({ env, now }: Shell): string {
  return reportDate(env, '', now);
}

/** The day it is where the user is; of SOURCE_DATE_EPOCH, the day in UTC. */
export function today(shell: Shell): string {
  if (shell.env.SOURCE_DATE_EPOCH) return moment(shell).slice(0, 10);
  const now = shell.now();
  const pad = (part: number) => String(part).padStart(2, '0');
  return `${now.getFullYear()}-${pad(now.getMonth() + 1)}-${pad(now.getDate())}`;
}
