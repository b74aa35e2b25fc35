export { jsonText } from '../problem/json-text.js';

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
