import type { ImageBlock } from '../../../report/document.js';
import type { Box, Press } from '../box.js';
import type { Tag } from '../tags.js';

/** A picture is never larger than this, and its pixels never coarser than on a screen. */
const mostHeight = 54;

/** A picture at its place, as a figure with its words. */
export function imageBox({ document, tags }: Press, image: ImageBlock, width: number, parent: Tag): Box {
  const { widthPixels, heightPixels, alternative: alt } = image;
  const scale = Math.min(1, width / widthPixels, mostHeight / heightPixels);
  const fit: [number, number] = [widthPixels * scale, heightPixels * scale];
  return {
    height: fit[1],
    before: 0,
    after: 6,
    keepWithNext: false,
    draw: (x, y) => {
      tags.add(parent, 'Figure', () => document.image(Buffer.from(image.bytes), x, y, { fit }), {
        alt,
        bbox: [x, y, x + fit[0], y + fit[1]],
        placement: 'Block',
      });
    },
  };
}
