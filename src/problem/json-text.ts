/** What JSON leaves as it is and a terminal or an editor might obey: C1 controls, direction, hidden and tag characters. */
const steering =
  /[\u007f-\u009f\u00ad\u061c\u180e\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb]|\udb40[\udc00-\udc7f]/g;

/**
 * JSON text that is safe to print: every character that could steer a terminal or reorder a line is written as an
 * escape, so that nothing is lost and nothing happens. Ends with a line feed.
 */
export function jsonText(value: unknown): string {
  return `${withoutSteering(JSON.stringify(value, null, 2))}\n`;
}

/** JSON text with every character that could steer a terminal written as an escape; it means the same. */
export function withoutSteering(json: string): string {
  return json.replace(steering, escaped);
}

function escaped(found: string): string {
  return found
    .split('')
    .map((unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`)
    .join('');
}
