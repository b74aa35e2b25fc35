import { beforeAll, describe, expect, it } from 'vitest';
import { ArchivalDocument } from '../../src/render/pdf/archival-document.js';
import { ChartContext } from '../../src/render/pdf/chart/chart-context.js';
import { Path } from '../../src/render/pdf/chart/path.js';
import { type FontBytes, loadFonts } from '../../src/render/pdf/index.js';
import { Typesetter } from '../../src/render/pdf/typesetter.js';
import { pageContent, pdfPages } from './pdf-text.js';

let fonts: FontBytes;
beforeAll(async () => {
  fonts = await loadFonts();
});

/** Draws on a page of 100 × 100 points and gives back the file. */
function drawn(draw: (context: ChartContext) => void, at = [0, 0]): Promise<Uint8Array> {
  const document = new ArchivalDocument({ size: [100, 100], margin: 0, compress: false, font: '' });
  const parts: Uint8Array[] = [];
  const finished = new Promise<Uint8Array>((resolve) => {
    document.on('data', (part: Uint8Array) => parts.push(part));
    document.on('end', () => resolve(Buffer.concat(parts)));
  });
  draw(new ChartContext(document, new Typesetter(document, fonts), at[0]!, at[1]!));
  document.end();
  return finished;
}

const operators = async (draw: (context: ChartContext) => void, at?: number[]): Promise<string> =>
  pageContent(await drawn(draw, at));

function line(context: ChartContext): void {
  context.beginPath();
  context.moveTo(0, 10);
  context.lineTo(50, 10);
  context.stroke();
}

describe('the drawing surface of charts', () => {
  it('draws dashes, scaled like everything else', async () => {
    const content = await operators((context) => {
      context.scale(2, 2);
      context.setLineDash([4, 2.5]);
      line(context);
    });
    expect(content).toMatch(/\[8 5\] 0 d/);
    expect(content).toContain('0 20 m\n100 20 l\nS');
  });

  it('draws a dash without gaps as a plain line and never passes a dash of length 0', async () => {
    const solid = await operators((context) => {
      context.setLineDash([1, 0]);
      line(context);
    });
    expect(solid).not.toMatch(/\] [\d.]+ d/);
    const dotted = await operators((context) => {
      context.setLineDash([0, 3]);
      line(context);
    });
    expect(dotted).toMatch(/\[0.001 3\] 0 d/);
  });

  it('clips until the state before is restored', async () => {
    const content = await operators((context) => {
      context.save();
      context.beginPath();
      context.rect(10, 10, 20, 20);
      context.clip();
      line(context);
      context.restore();
      line(context);
    });
    const [inside = '', outside = ''] = content.split(/(?<=S\nQ\n)Q\n/);
    expect(inside).toMatch(/10 10 m[\s\S]*W n[\s\S]*S/);
    expect(outside).toContain('S');
    expect(outside).not.toContain('W n');
  });

  it('maps points when they are added, so that moving the origin back leaves a shape in place', async () => {
    const content = await operators(
      (context) => {
        context.save();
        context.translate(30, 40);
        context.beginPath();
        context.moveTo(0, 0);
        context.lineTo(5, 0);
        context.restore();
        context.stroke();
      },
      [1, 2],
    );
    expect(content).toContain('31 42 m\n36 42 l\nS');
  });

  it('keeps a path after filling it, for its outline', async () => {
    const content = await operators((context) => {
      context.fillStyle = 'rgb(255, 0, 0)';
      context.strokeStyle = '#0000ff80';
      context.beginPath();
      context.rect(1, 1, 2, 2);
      context.fill();
      context.stroke();
    });
    expect(content.match(/1 1 m/g)).toHaveLength(2);
    expect(content).toContain('1 0 0 scn');
    expect(content).toContain('0 0 1 SCN');
  });

  it('writes text as text, to the left, the middle or the right, and turned', async () => {
    const bytes = await drawn((context) => {
      context.font = '600 8px Source Sans 3';
      context.fillStyle = '#17252f';
      context.fillText('left', 10, 10);
      context.textAlign = 'right';
      context.fillText('right', 50, 10);
      context.save();
      context.rotate(-Math.PI / 2);
      context.fillText('turned', 0, 0);
      context.restore();
    });
    const [text] = pdfPages(bytes);
    for (const word of ['left', 'right', 'turned']) expect(text).toContain(word);
    expect(pageContent(bytes)).toMatch(/0 -1 1 0 [\d.]+ [\d.]+ cm/);
  });

  it('measures text with the font it writes in', () => {
    const document = new ArchivalDocument({ font: '' });
    const typesetter = new Typesetter(document, fonts);
    const context = new ChartContext(document, typesetter, 0, 0);
    context.font = 'bold 10px Source Sans 3';
    expect(context.measureText('kg·cm').width).toBeCloseTo(typesetter.width('kg·cm', 'strong', 10), 9);
  });
});

describe('a path', () => {
  const circle = { x: 0, y: 0, radius: 10 };

  it('turns a full circle into four curves that end where they began', () => {
    const path = new Path();
    path.arc([1, 0, 0, 1, 5, 5], circle, 0, 2 * Math.PI, false);
    expect(path.steps.map((step) => step.kind)).toEqual(['move', 'curve', 'curve', 'curve', 'curve']);
    const last = path.steps.at(-1)!;
    expect(last.kind === 'curve' && last.to).toEqual([expect.closeTo(15, 9), expect.closeTo(5, 9)]);
  });

  it('keeps arcs within a ten-thousandth of their circle', () => {
    const path = new Path();
    path.arc([1, 0, 0, 1, 0, 0], circle, 0, Math.PI / 2, false);
    const curve = path.steps[1]!;
    if (curve.kind !== 'curve') throw new Error('no curve');
    const [a, b] = curve.control;
    const middle = [0, 1].map((axis) => ([10, 0][axis]! + 3 * a[axis]! + 3 * b[axis]! + curve.to[axis]!) / 8);
    expect(Math.abs(Math.hypot(middle[0]!, middle[1]!) / 10 - 1)).toBeLessThan(1e-3);
  });

  it('turns backwards when asked, the long way round when that is the way', () => {
    const path = new Path();
    path.arc([1, 0, 0, 1, 0, 0], circle, 0, Math.PI / 2, true);
    expect(path.steps.filter((step) => step.kind === 'curve')).toHaveLength(3);
  });
});
