import { describe, expect, it } from 'vitest';
import { element, htmlOf, Markup } from '../../../src/render/html/markup.js';

describe('markup', () => {
  it('escapes text among children and attributes', () => {
    const made = element('p', { title: '"a" & <b>' }, `<script>'x'</script>`);
    expect(made.html).toBe(
      '<p title="&quot;a&quot; &amp; &lt;b&gt;">&lt;script&gt;&#39;x&#39;&lt;/script&gt;</p>',
    );
  });

  it('takes control and direction characters out', () => {
    expect(htmlOf('a\u202eb\u0007c\u2066d\u200be')).toBe('abcde');
  });

  it('lets no line end between a figure and its unit, or within a range', () => {
    expect(htmlOf('runs 59 min (40–83), at 0.729 m/s; 22 %.')).toBe(
      'runs 59\u00a0min (<span class="figure">40–83)</span>, at 0.729\u00a0m/s; 22\u00a0%.',
    );
    expect(htmlOf('−3 to 0')).toBe('<span class="figure">−3 to 0</span>');
    expect(htmlOf('by 12–30 mm of it')).toBe('by <span class="figure">12–30\u00a0mm</span> of it');
    expect(htmlOf('1 to many, 2026-04-11')).toBe('1 to many, 2026-04-11');
  });

  it('puts no element into a title', () => {
    expect(element('title', {}, '1–2 < 3').html).toBe('<title>1–2 &lt; 3</title>');
  });

  it('keeps what is markup, and closes no void element', () => {
    expect(htmlOf([element('br', {}), new Markup('<i>x</i>'), null, 'y'])).toBe('<br><i>x</i>y');
  });
});
