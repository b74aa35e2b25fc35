import { describe, expect, it } from 'vitest';
import { coloursOf, tidySvg } from '../../../src/render/html/charts/tidy-svg.js';

const drawing =
  '<svg xmlns="http://www.w3.org/2000/svg" version="1.1" class="marks" width="480" height="167" viewBox="0 0 480 167">' +
  '<g fill="none"><path class="background" aria-hidden="true" d="M0,0h0v0h0Z" pointer-events="none"/>' +
  '<g clip-path="url(#clip7)"><path fill="#0b5d6b" d="M1.23456,2" opacity="1"/></g>' +
  '<text fill="#17252f" font-family="Source Sans 3" style="x: y">1.23456 opacity="1" class="a"</text></g>' +
  '<defs><clipPath id="clip7"><rect width="20" height="10"/></clipPath></defs></svg>';

describe('a drawing for a page', () => {
  it('has ids of its own, wherever they are named', () => {
    const tidy = tidySvg(drawing, 'svg3_w');
    expect(tidy).toContain('clip-path="url(#svg3_w_1)"');
    expect(tidy).toContain('<clipPath id="svg3_w_1">');
    expect(tidy).not.toContain('clip7');
  });

  it('loses its size and what the page says already, but keeps the size of its parts', () => {
    expect(tidySvg(drawing, 'a')).toBe(
      '<svg viewBox="0 0 480 167"><g fill="none"><g clip-path="url(#a_1)"><path fill="#0b5d6b" d="M1.23,2"/></g>' +
        '<text fill="#17252f">1.23456 opacity="1" class="a"</text></g>' +
        '<defs><clipPath id="a_1"><rect width="20" height="10"/></clipPath></defs></svg>',
    );
  });

  it('tells its colours', () => {
    expect(coloursOf([drawing, '<path stroke="#17252f"/>'])).toEqual(['#0b5d6b', '#17252f', 'none']);
  });
});
