/** What JSON leaves as it is and a terminal or an editor might obey: C1 controls, direction, hidden and tag characters. */
const steering =
  /[\u007f-\u009f\u00ad\u061c\u180e\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb]|\udb40[\udc00-\udc7f]/g;

/**
 * JSON text that is safe to print: every character that could steer a terminal or reorder a line is written as an
 * escape, so that nothing is lost and nothing happens. Ends with a line feed.
 */
export function jsonText(value: unknown): string {
  const text = JSON.stringify(value, null, 2);
  return `${text.replace(steering, escaped)}\n`;
}

function escaped(found: string): string {
  return found
    .split('')
    .map((unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`)
    .join('');
}

/** The object that a JSON text holds; null when it is damaged, or no object. */
export function objectFrom(text: string): Record<string, unknown> | null {
  try {
    const read: unknown = JSON.parse(text);
    return typeof read === 'object' && read !== null && !Array.isArray(read)
      ? (read as Record<string, unknown>)
      : null;
  } catch {
    return null;
  }
}
