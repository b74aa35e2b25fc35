import { describe, expect, it } from 'vitest';
import { driveKinds } from '../../src/drives/columns.js';
import { driveTypes } from '../../src/drives/registry.js';
import { assumptionsTemplate } from '../../src/input/assumptions-template.js';
import { csvwDescription } from '../../src/input/csvw.js';
import { fieldReference } from '../../src/input/field-reference.js';
import { howToMeasure } from '../../src/input/how-to-measure.js';
import { starterStudy } from '../../src/input/starter-study.js';
import { studyFields } from '../../src/study/fields.js';
import { readFiles } from './good-study.js';

const asFiles = (kinds: Parameters<typeof starterStudy>[0]) =>
  Object.fromEntries(starterStudy(kinds).map(({ name, text }) => [name, text]));

// After a change of the field table: npx vitest run --dir test/input -u
describe('what stands under templates/ is what the field table says', () => {
  it('the assumptions', async () => {
    await expect(assumptionsTemplate()).toMatchFileSnapshot('../../templates/assumptions.csv');
  });

  it.each(driveKinds)('the starter of a %s', async (kind) => {
    for (const { name, text } of starterStudy(kind)) {
      await expect(text).toMatchFileSnapshot(`../../templates/starter-${kind}/${name}`);
    }
  });
});

describe('a starter study', () => {
  it.each([...driveKinds, driveKinds])('of %s reads without errors or warnings', (kinds) => {
    expect(readFiles(asFiles(kinds)).issues).toEqual([]);
  });

  const headerOf = (text: string) => text.split('\n').find((line) => !line.startsWith('#'))!;

  it.each(driveKinds)('of a %s has every column of its field table where all are asked for', (kind) => {
    const { text } = starterStudy(kind, true).find(({ name }) => name === 'candidates.csv')!;
    expect(headerOf(text)).toBe(driveTypes[kind].columns.map(({ name }) => name).join(','));
    expect(readFiles({ ...asFiles(kind), 'candidates.csv': text }).issues).toEqual([]);
  });

  it.each(driveKinds)('of a %s can be filled in by hand, and says that more columns exist', (kind) => {
    const text = asFiles(kind)['candidates.csv']!;
    const names = headerOf(text).split(',');
    expect(names.length).toBeLessThan(30);
    for (const { name, presence } of driveTypes[kind].columns)
      if (presence === 'required') expect(names).toContain(name);
    expect(text).toContain('--all-columns');
  });

  it('lists every item, each below a line that says how to find it', () => {
    const lines = asFiles('position-servo')['study.csv']!.split('\n');
    for (const { name, how } of studyFields('hinge')) {
      const at = lines.findIndex((line) => line.startsWith(`${name},`));
      expect(lines[at - 1], name).toMatch(/^# .* How: /);
      expect(lines[at - 1]).toContain(how);
    }
  });

  it('says in its first line that its figures are invented', () => {
    for (const { text } of starterStudy('screw-actuator'))
      expect(text).toMatch(/^# Starter file\. Every figure is an invented/);
  });

  it('has optional files whose rows can be uncommented', () => {
    const files = asFiles('position-servo');
    for (const name of ['loads.csv', 'criteria.csv', 'day.csv', 'measured.csv']) {
      const [comments, rows] = files[name]!.split(/\n(?=[a-z])/) as [string, string];
      files[name] = `${comments}\n${rows.replace(/^# /gm, '')}`;
    }
    expect(readFiles(files).issues).toEqual([]);
  });
});

describe('references made from the field table', () => {
  it('tell every field in Markdown', () => {
    const reference = fieldReference();
    for (const kind of driveKinds)
      for (const { name } of driveTypes[kind].columns) expect(reference).toContain(`| \`${name}\` |`);
    for (const { name } of [...studyFields('hinge'), ...studyFields('slide')])
      expect(reference).toContain(`| \`${name}\` |`);
  });

  it('describe the files as a CSVW table group', () => {
    const { tables } = csvwDescription(['study.csv', 'candidates.csv', 'candidates-found.csv', 'readme.txt']);
    expect(tables.map(({ url }) => url)).toEqual(['study.csv', 'candidates.csv', 'candidates-found.csv']);
    const names = tables[1]!.tableSchema.columns.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    expect(names.slice(0, 3)).toEqual(['id', 'label', 'type']);
    expect(csvwDescription().tables).toHaveLength(8);
  });

  it('say how to measure a field', () => {
    expect(howToMeasure('feature.mass', null)?.how).toContain('kitchen scale');
    expect(howToMeasure('stall_torque', 'position-servo')?.how).toContain('luggage scale');
    expect(howToMeasure('stroke', 'position-servo')).toBeNull();
  });
});
