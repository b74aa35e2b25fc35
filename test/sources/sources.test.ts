import { describe, expect, it } from 'vitest';
import { cited, findSource, sources } from '../../src/sources/sources.js';

describe('the register of sources', () => {
  it('holds every publication once', () => {
    const ids = sources.map((source) => source.id);
    expect(new Set(ids).size).toBe(ids.length);
    const titles = sources.map((source) => `${source.authors}, ${source.title}`);
    expect(new Set(titles).size).toBe(titles.length);
  });

  it('names authors and title of each, and a plausible year or none', () => {
    for (const source of sources) {
      expect(source.authors).not.toBe('');
      expect(source.title).not.toBe('');
      if (source.year === null) continue;
      expect(source.year).toBeGreaterThan(1900);
      expect(source.year).toBeLessThanOrEqual(2026);
    }
  });

  it('uses ids of lower case letters, digits and hyphens', () => {
    for (const source of sources) expect(source.id).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
  });

  it('does not know what it does not hold', () => {
    expect(findSource('nowhere')).toBeUndefined();
  });

  it('hands a cited value back as it is', () => {
    expect(cited(9.80665, 'si-brochure', '3rd CGPM (1901)')).toBe(9.80665);
  });
});
