import { describe, expect, it } from 'vitest';
import { assessStudy } from '../../src/app/study.js';
import { blanksOf } from '../../src/assess/blanks.js';
import { summarise } from '../../src/report/index.js';
import { readTemplates } from '../report/templates.js';
import { demoFiles, request } from './demo.js';

/** The ranking of the second demo with one candidate's price left blank. */
function withoutPrice() {
  const asked = request(demoFiles('stage-prop'), ['winch-fast.price=']);
  const result = assessStudy(asked, 'ranking');
  if (!result.ok) throw new Error(result.issues.map(({ message }) => message).join('\n'));
  return { assessment: result.value, summary: summarise(result.value, readTemplates(), '') };
}

describe('a price left blank in a whole study', { timeout: 120_000 }, () => {
  const { assessment, summary } = withoutPrice();

  it('weighs nothing for anybody, and is on record with its weight', () => {
    expect(assessment.study.criteria.find(({ id }) => id === 'cost')).toMatchObject({
      weightScore: 0,
      leftOut: { weightScore: 1, blanks: [{ candidate: 'winch-fast', field: 'price' }] },
    });
    for (const { criteria } of assessment.candidates)
      expect(criteria.map(({ criterion }) => criterion)).not.toContain('cost');
  });

  it('is named wherever somebody could take the score for whole', () => {
    expect(blanksOf(assessment).map(({ field }) => field)).toContain('price');
    expect(summary.fillInFirst.join(' ')).toContain('the score leaves out cost for every candidate');
  });
});
