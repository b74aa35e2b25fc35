import { hasHiddenCharacters } from '../problem/printable.js';
import type { Trouble } from '../problem/trouble.js';
import * as say from './messages.js';

/** A line of a manifest: what a file must hash to. */
export interface ManifestLine {
  /** Path inside the bag, parts joined by `/`. */
  path: string;
  sha256: string;
  line: number;
}

/** A manifest as read: the lines that can be used, and what is wrong with the others. */
export interface Manifest {
  lines: ManifestLine[];
  troubles: { line: number; trouble: Trouble }[];
}

/** Text of a manifest, sorted by path, as the `sha256sum` of other systems checks it. */
export function manifestText(lines: readonly Pick<ManifestLine, 'path' | 'sha256'>[]): string {
  const sorted = [...lines].sort((a, b) => (a.path < b.path ? -1 : 1));
  return sorted.map(({ path, sha256 }) => `${sha256}  ${path}\n`).join('');
}

/**
 * Reads a manifest from whomever. A path that leads out of the bag is named and never looked at.
 * @param below folder that every path must lie in; null for files beside it
 */
export function readManifest(text: string, below: string | null): Manifest {
  const read: Manifest = { lines: [], troubles: [] };
  const seen = new Map<string, string>();
  text.split(/\r?\n/).forEach((written, index) => {
    if (written === '') return;
    const parts = /^([0-9a-f]{64}) [ *](.+)$/i.exec(written);
    const path = parts === null ? '' : decoded(parts[2]!);
    const trouble = parts === null ? say.malformedLine(written) : troubleWith(path, below, seen);
    const line = index + 1;
    if (trouble === null) read.lines.push({ path, sha256: parts![1]!.toLowerCase(), line });
    else read.troubles.push({ line, trouble });
  });
  return read;
}

/** Why a path may not stand in a manifest; null when it may, and then it has been seen. */
function troubleWith(path: string, below: string | null, seen: Map<string, string>): Trouble | null {
  if (!isInside(path)) return say.unsafePath(path);
  if (below === null ? path.includes('/') : !path.startsWith(`${below}/`)) return say.strayPath(path, below);
  const twin = seen.get(fold(path));
  if (twin !== undefined) return twin === path ? say.listedTwice(path) : say.caseTwin(path, twin);
  seen.set(fold(path), path);
  return null;
}

/** What two names are the same under, on a system that knows neither case nor composed letters. */
export const fold = (path: string): string => path.normalize('NFC').toLowerCase();

/** Line feeds, carriage returns and percent signs are written with their codes. */
function decoded(path: string): string {
  return path.replace(/%(0A|0D|25)/gi, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)));
}

/** Whether a path stays inside the folder it is taken from, on every system. */
export function isInside(path: string): boolean {
  if (/[\\:\t\n\r]|^~/.test(path) || hasHiddenCharacters(path)) return false;
  const parts = path.split('/');
  return !parts.some((part) => part === '' || part === '.' || part === '..');
}
