import type { ChartBlock } from '../../../report/document.js';
import type { Box, Press } from '../box.js';
import { ChartContext } from '../chart/chart-context.js';
import { breakLines, drawLines } from '../lines.js';
import { type } from '../style.js';
import type { Tag } from '../tags.js';

/** A figure with the reader's question above and what it shows below; never parted. */
export function chartBox(press: Press, chart: ChartBlock, width: number, parent: Tag): Box {
  const { typesetter, tags } = press;
  const prepared = press.charts.get(chart);
  if (!prepared) throw new Error(`chart ${chart.name} was not prepared`);
  const title = breakLines(typesetter, [{ text: chart.title }], type.subheading, width);
  const caption = breakLines(typesetter, chart.caption, type.caption, width);
  const titleHeight = title.length * type.subheading.leading + 4;
  const captionHeight = caption.length * type.caption.leading + (caption.length > 0 ? 4 : 0);
  return {
    height: titleHeight + prepared.height + captionHeight,
    before: 11,
    after: 8,
    keepWithNext: false,
    draw: (x, y) => {
      tags.add(parent, 'P', () => drawLines(typesetter, title, type.subheading, { x, y, width }));
      const top = y + titleHeight;
      const figure = tags.add(
        parent,
        'Figure',
        () => prepared.draw(new ChartContext(press.document, typesetter, x, top)),
        {
          alt: chart.alternative,
          bbox: [x, top, x + width, top + prepared.height],
          placement: 'Block',
        },
      );
      if (caption.length === 0) return;
      const below = { x, y: top + prepared.height + 4, width };
      tags.add(figure, 'Caption', () => drawLines(typesetter, caption, type.caption, below));
    },
  };
}
