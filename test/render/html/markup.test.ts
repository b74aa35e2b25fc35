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

  it('keeps what is markup, and closes no void element', () => {
    expect(htmlOf([element('br', {}), new Markup('<i>x</i>'), null, 'y'])).toBe('<br><i>x</i>y');
  });
});
