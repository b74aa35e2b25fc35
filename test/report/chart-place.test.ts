import { describe, expect, it } from 'vitest';
import { placed } from '../../src/report/template/chart-place.js';
import { fillChart } from '../../src/report/template/fill-chart.js';

describe('a chart for one place', () => {
  const bar = { type: 'bar', size: 8, narrow: { size: 12, stroke: '#ffffff' }, wide: { opacity: 0.5 } };

  it('takes what is said for that place before what is said for all', () => {
    expect(placed(bar, 'wide')).toEqual({ type: 'bar', size: 8, opacity: 0.5 });
    expect(placed(bar, 'narrow')).toEqual({ type: 'bar', size: 12, stroke: '#ffffff' });
  });

  it('says nothing of places where it was asked for any, however deep', () => {
    const deep = { layer: [{ mark: bar, narrow: { mark: { ...bar, narrow: { size: 20 } } } }] };
    expect(placed(deep, 'wide')).toEqual({ layer: [{ mark: { type: 'bar', size: 8, opacity: 0.5 } }] });
    expect(placed(deep, 'narrow')).toEqual({ layer: [{ mark: { type: 'bar', size: 20 } }] });
  });

  it('leaves out what is null there, and keeps a null that holds everywhere', () => {
    const encoding = { legend: null, x2: { field: 'end' }, narrow: { x2: null } };
    expect(placed(encoding, 'wide')).toEqual({ legend: null, x2: { field: 'end' } });
    expect(placed(encoding, 'narrow')).toEqual({ legend: null });
    expect(placed([{ wide: null, mark: 'text' }, { mark: 'bar' }], 'wide')).toEqual([{ mark: 'bar' }]);
    expect(placed([{ wide: null, mark: 'text' }], 'narrow')).toEqual([{ mark: 'text' }]);
  });

  it('takes a column that is called narrow for a column', () => {
    expect(placed({ values: [{ narrow: 3, wide: 5 }] }, 'narrow')).toEqual({
      values: [{ narrow: 3, wide: 5 }],
    });
  });

  it('has the look of that place, and a chart that says nothing of places has it too', () => {
    const templates = {
      'charts/theme.json': '{ "text": { "fontSize": 8, "narrow": { "fontSize": 12 } } }',
      'charts/own.json': '{ "mark": "bar", "data": { "values": "{{rows}}" } }',
    };
    const rows = [{ narrow: { size: 1 } }];
    const drawn = { mark: 'bar', data: { values: rows } };
    expect(fillChart(templates, 'own', { rows })).toEqual({ ...drawn, config: { text: { fontSize: 8 } } });
    expect(fillChart(templates, 'own', { rows }, 'narrow')).toEqual({
      ...drawn,
      config: { text: { fontSize: 12 } },
    });
  });
});
