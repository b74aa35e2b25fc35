import { plainLetters } from './record.js';

/** Names that some systems keep for devices, whatever their ending. */
const deviceNames = /^(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$)/i;

const longestName = 100;

/**
 * Names under which files are kept: letters, digits, `.`, `_` and `-` only, none hidden, none that a system keeps for
 * itself, no two alike but for their case. A folder in front is dropped, be it written with `/` or `\`.
 *
 * @param names as the files were called
 * @returns one for each, in the same order; the same names always give the same
 */
export function payloadNames(names: readonly string[]): string[] {
  const used = new Set<string>();
  return names.map((name) => {
    const safe = safeName(name);
    const dot = safe.lastIndexOf('.');
    const [stem, ending] = dot > 0 ? [safe.slice(0, dot), safe.slice(dot)] : [safe, ''];
    let free = safe;
    for (let count = 2; used.has(free.toLowerCase()); count++) free = `${stem}-${count}${ending}`;
    used.add(free.toLowerCase());
    return free;
  });
}

function safeName(name: string): string {
  const last = name.split(/[/\\]/).at(-1) ?? '';
  const plain = plainLetters(last)
    .replace(/[^A-Za-z0-9._-]+/g, '_')
    .replace(/^[.-]+/, '_')
    .replace(/\.+$/, '');
  const named = plain === '' || deviceNames.test(plain) ? `file-${plain}` : plain;
  if (named.length <= longestName) return named;
  const ending = /\.[A-Za-z0-9]{1,8}$/.exec(named)?.[0] ?? '';
  return named.slice(0, longestName - ending.length) + ending;
}
