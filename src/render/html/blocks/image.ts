import type { ImageBlock } from '../../../report/document.js';
import { element, type Markup } from '../markup.js';

/** A picture inside the page itself: nothing is fetched. */
export function image({ format, bytes, widthPixels, heightPixels, alternative }: ImageBlock): Markup {
  const src = `data:image/${format};base64,${Buffer.from(bytes).toString('base64')}`;
  const size = { width: widthPixels, height: heightPixels };
  return element('p', { class: 'picture' }, element('img', { src, alt: alternative, ...size }));
}
