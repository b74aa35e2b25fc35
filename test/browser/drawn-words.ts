import type { Page } from 'playwright-core';

/** A rectangle on the screen, in CSS pixels. */
interface Box {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/** Words of a chart as a browser shows them. */
interface Word extends Box {
  text: string;
  /** Height of the letters' size, CSS pixels. */
  sizePx: number;
}

/** A chart as it stands on the screen. */
export interface DrawnWords {
  question: string;
  frame: Box;
  words: Word[];
  /** Bars that are darker than the ground of a chart. */
  bars: Box[];
}

/** Every chart that is shown, with the places of its words and bars. */
export function drawnWords(page: Page): Promise<DrawnWords[]> {
  return page.evaluate(async () => {
    await document.fonts.ready;
    const onScreen = (shape: SVGGraphicsElement, above = 0, below = 0) => {
      const { x, y, width, height } = shape.getBBox();
      const matrix = shape.getScreenCTM()!;
      const corners = [
        new DOMPoint(x, y + above).matrixTransform(matrix),
        new DOMPoint(x + width, y + height - below).matrixTransform(matrix),
      ];
      const [xs, ys] = [corners.map((corner) => corner.x), corners.map((corner) => corner.y)];
      return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
    };
    const word = (element: SVGTextElement) => {
      const { a, b } = element.getScreenCTM()!;
      const size = Number.parseFloat(getComputedStyle(element).fontSize);
      // A face keeps room above its capitals and below its tails, in which nothing is drawn.
      const box = onScreen(element, size * 0.27, size * 0.18);
      return { ...box, text: element.textContent, sizePx: size * Math.hypot(a, b) };
    };
    const isDark = (path: SVGPathElement) => {
      const fill = path.getAttribute('fill') ?? 'none';
      if (!/^#[0-9a-f]{6}$/.test(fill) || Number(path.getAttribute('fill-opacity') ?? 1) < 0.5) return false;
      const parts = [1, 3, 5].map((at) => Number.parseInt(fill.slice(at, at + 2), 16));
      return Math.min(...parts) < 215;
    };
    const isRectangle = (path: SVGPathElement) =>
      /^M[^a-z]*h[^a-z]*v[^a-z]*h[^a-z]*z$/i.test(path.getAttribute('d') ?? '');
    return [...document.querySelectorAll<SVGSVGElement>('figure svg')]
      .filter((svg) => svg.getClientRects().length > 0)
      .map((svg) => {
        const { left, right, top, bottom } = svg.getBoundingClientRect();
        return {
          question: svg.closest('figure')!.querySelector('.question')!.textContent,
          frame: { left, right, top, bottom },
          words: [...svg.querySelectorAll('text')].filter((text) => text.textContent.trim() !== '').map(word),
          bars: [...svg.querySelectorAll('path')]
            .filter((path) => isRectangle(path) && isDark(path))
            .map((path) => onScreen(path)),
        };
      });
  });
}

/** Everything about the words of a chart that a reader would stumble over, in words; nothing where all is well. */
export function faultsOf({ question, frame, words, bars }: DrawnWords, leastPx: number): string[] {
  const told = (fault: string) => `${question} ${fault}`;
  return words.flatMap((word, index) => [
    ...(word.sizePx < leastPx ? [told(`"${word.text}" is ${word.sizePx.toFixed(1)} px high`)] : []),
    ...(isInside(word, frame) ? [] : [told(`"${word.text}" sticks out`)]),
    ...words
      .slice(index + 1)
      .filter((other) => overlaps(word, other))
      .map((other) => told(`"${word.text}" lies on "${other.text}"`)),
    ...(bars.some((bar) => overlaps(word, bar) && !isInside(word, bar))
      ? [told(`"${word.text}" lies half on a bar`)]
      : []),
  ]);
}

/** Rounding of positions, CSS pixels. */
const hair = 1;

function isInside(box: Box, around: Box): boolean {
  return (
    box.left >= around.left - hair &&
    box.right <= around.right + hair &&
    box.top >= around.top - hair &&
    box.bottom <= around.bottom + hair
  );
}

function overlaps(a: Box, b: Box): boolean {
  return (
    Math.min(a.right, b.right) - Math.max(a.left, b.left) > hair &&
    Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > hair
  );
}
