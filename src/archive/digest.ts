import { createHash } from 'node:crypto';

/** SHA-256 of some bytes, in hexadecimal. */
export function sha256Of(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

/** Text as UTF-8. */
export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

/** UTF-8 as text; what is no UTF-8 shows as �. */
export const textOf = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);
