// Escape sequences of terminals: CSI and OSC with their ends, then single-character ones.
const escapeSequences =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what this file removes
  /\u001b\[[0-?]*[ -/]*[@-~]|\u009b[0-?]*[ -/]*[@-~]|\u001b\][^\u0007\u001b\u009c]*(?:\u0007|\u001b\\|\u009c)?|\u001b[ -/]*[0-~]/g;

// Control characters, and format characters that reorder or hide text: zero width, bidi embeddings,
// overrides and isolates, line and paragraph separators, byte order mark, tag characters.
const hiddenCharacters =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what this file removes
  /[\u0000-\u001f\u007f-\u009f\u00ad\u061c\u180e\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb]|[\u{e0000}-\u{e007f}]/gu;

/** Whether the text holds control characters or characters that reorder or hide what follows. */
export function hasHiddenCharacters(text: string): boolean {
  return text.replace(/[\t\n\r]/g, ' ').search(hiddenCharacters) >= 0;
}

/**
 * The text on one line as it may reach a terminal: terminal escapes, control and bidirectional control characters
 * removed, line breaks and tabs turned into spaces.
 */
export function printable(text: string): string {
  return text
    .replace(escapeSequences, '')
    .replace(/\r\n|[\t\n\r\u2028\u2029]/g, ' ')
    .replace(hiddenCharacters, '');
}

/** The text as it is quoted inside a message: printable and not longer than a line. */
export function quoted(text: string, longest = 60): string {
  const clean = printable(text);
  const characters = Array.from(clean);
  return characters.length > longest ? `${characters.slice(0, longest - 1).join('')}…` : clean;
}
