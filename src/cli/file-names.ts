import { win32 } from 'node:path';

/** Names that Windows keeps for devices, whatever their ending. */
const deviceNames = /^(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$)/i;

/**
 * Why Windows would not take a path, or would take it for something else; null where it is a plain one.
 * Both separators, drive letters and shares are understood.
 */
export function refusedByWindows(path: string): string | null {
  const { root } = win32.parse(path);
  for (const part of path.slice(root.length).split(/[\\/]/)) {
    if (part === '' || part === '.' || part === '..') continue;
    if (deviceNames.test(part)) return `Windows keeps the name ${part} for a device`;
    // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are among what is refused
    if (/[<>:"|?*\u0000-\u001f]/.test(part)) return `Windows takes no < > : " | ? * in a name: ${part}`;
    if (/[. ]$/.test(part)) return `Windows drops the dot or space at the end of ${part}`;
  }
  return null;
}

const reasons: Record<string, string> = {
  EACCES: 'the system gives no permission',
  EPERM: 'the system gives no permission',
  EROFS: 'the disk can only be read',
  ENOSPC: 'the disk is full',
  EDQUOT: 'the disk is full for you',
  EEXIST: 'a file stands where the folder should be',
  ENOTDIR: 'a file stands where a folder should be',
  ENAMETOOLONG: 'the name is longer than the system takes',
  EBUSY: 'another program holds the file',
};

/** What the system said, in words where it says it in a code. */
export function systemReason(error: unknown): string {
  const { code, message } = error as NodeJS.ErrnoException;
  const words = code === undefined ? undefined : reasons[code];
  return words === undefined ? message : `${words} (${code})`;
}
