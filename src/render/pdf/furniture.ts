import type { ReportDocument } from '../../report/document.js';
import type { Press } from './box.js';
import { palette, type } from './style.js';

/** Writes running heads, foot lines and page numbers on all pages, once their count is known. */
export function drawFurniture(press: Press, report: ReportDocument, runningHeads: string[]): void {
  const { document, tags } = press;
  const { start, count } = document.bufferedPageRange();
  for (let index = 0; index < count; index++) {
    document.switchToPage(start + index);
    document.page.margins.bottom = 0;
    const number = report.pageNumber.replace('##', String(count)).replace('#', String(index + 1));
    tags.artifact('Pagination', () => {
      drawHead(press, report.subtitle, runningHeads[index] ?? '', index === 0);
      drawFoot(press, report.footer, number);
    });
  }
}

function drawHead(press: Press, left: string, right: string, isFirst: boolean): void {
  const { geometry, typesetter, document } = press;
  const baseline = 38;
  const room = geometry.textWidth * 0.6;
  const shown = shortened(press, left, room);
  const strong = { ...type.furniture, face: 'strong' as const };
  if (!isFirst) typesetter.write(shown, geometry.left, baseline, type.furniture);
  const text = shortened(press, right, geometry.textWidth - room - 10);
  const width = typesetter.width(text, 'strong', strong.size);
  typesetter.write(text, geometry.left + geometry.textWidth - width, baseline, strong);
  const y = baseline + 6;
  document
    .moveTo(geometry.left, y)
    .lineTo(geometry.left + geometry.textWidth, y)
    .lineWidth(0.5)
    .stroke(palette.hairline);
}

function drawFoot(press: Press, left: string, right: string): void {
  const { geometry, typesetter } = press;
  const baseline = geometry.height - 28;
  typesetter.write(left, geometry.left, baseline, type.furniture);
  const width = typesetter.width(right, 'regular', type.furniture.size);
  typesetter.write(right, geometry.left + geometry.textWidth - width, baseline, type.furniture);
}

function shortened(press: Press, text: string, room: number): string {
  const fits = (shown: string): boolean =>
    press.typesetter.width(shown, 'strong', type.furniture.size) <= room;
  if (fits(text)) return text;
  const signs = [...text];
  while (signs.length > 0 && !fits(`${signs.join('')}…`)) signs.pop();
  return `${signs.join('').trimEnd()}…`;
}
