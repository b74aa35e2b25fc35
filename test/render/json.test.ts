import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { renderJson } from '../../src/render/json/render-json.js';
import { toResults } from '../../src/report/index.js';
import { createAssessment, createDrawnAssessment } from '../report/fixture.js';
import { variants } from '../report/variants.js';

const schema = JSON.parse(
  readFileSync(new URL('../../templates/results.schema.json', import.meta.url), 'utf8'),
);
const validate = new Ajv2020({ allErrors: true, strict: true, allowUnionTypes: true }).compile(schema);
const results = (assessment = createAssessment()) => JSON.parse(renderJson(toResults(assessment)));

interface Node {
  $ref?: string;
  anyOf?: Node[];
  properties?: Record<string, Node>;
  items?: Node;
  description?: string;
  type?: string | string[];
}

/** Paths of keys that a value has and the schema does not tell. */
function untold(value: unknown, node: Node, path: string): string[] {
  const named = node.$ref ?? node.anyOf?.find((one) => one.$ref)?.$ref;
  const told = named ? (schema.$defs[named.split('/').at(-1)!] as Node) : node;
  if (Array.isArray(value))
    return told.items ? value.flatMap((item) => untold(item, told.items!, `${path}[]`)) : [];
  if (value === null || typeof value !== 'object' || !told.properties) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    told.properties![key] ? untold(inner, told.properties![key], `${path}.${key}`) : [`${path}.${key}`],
  );
}

describe('results.json', () => {
  it('keeps its contract', () => {
    validate(results());
    expect(validate.errors ?? []).toEqual([]);
  });

  for (const [name, create] of Object.entries(variants)) {
    it(`keeps its contract when: ${name}`, () => {
      validate(results(create()));
      expect(validate.errors ?? []).toEqual([]);
    });
  }

  it('has no key that the contract does not tell', () => {
    expect([...new Set(untold(results(), schema, ''))]).toEqual([]);
    expect([...new Set(untold(results(createDrawnAssessment()), schema, ''))]).toEqual([]);
  });

  it('tells bands and ranks with each candidate, verdict, lesser changes and the day, and no column of draws', () => {
    const drawn = results(createDrawnAssessment());
    const [first] = drawn.candidates;
    expect(first.uncertain.runtimeS.median).toBeCloseTo(10374, 6);
    expect(first.acceptability[0]).toBe(0.62);
    expect(Object.keys(drawn.certainty.candidates['worm-relay'])).not.toContain('uncertain');
    expect(drawn.verdict.confidence.word).toBe('likely');
    expect(drawn.lesserChanges.map(({ id }: { id: string }) => id)).toContain('pair');
    expect(drawn.day.plans).toHaveLength(5);
    const longest = (node: unknown): number =>
      Array.isArray(node)
        ? Math.max(node.length, ...node.map(longest))
        : node !== null && typeof node === 'object'
          ? Math.max(0, ...Object.values(node).map(longest))
          : 0;
    expect(longest({ ...drawn, candidates: [], study: null })).toBeLessThan(200);
  });

  it('breaks the contract when a figure is text or a key is gone', () => {
    const broken = results();
    broken.candidates[0].nominal.runtimeS = '182 min';
    delete broken.candidates[1].motor.resistanceOhm;
    validate(broken);
    const places = (validate.errors ?? []).map((error) => error.instancePath);
    expect(places).toEqual(expect.arrayContaining(['/candidates/0/nominal/runtimeS', '/candidates/1/motor']));
  });

  it('is the same text in whatever order its parts were put together', () => {
    const assessment = createAssessment();
    const turned = Object.fromEntries(Object.entries(assessment).reverse()) as typeof assessment;
    expect(renderJson(toResults(turned))).toBe(renderJson(toResults(assessment)));
  });

  it('rounds traces to six digits and nothing else', () => {
    const assessment = createAssessment();
    assessment.candidates[0]!.score = 0.123456789012;
    const [first] = results(assessment).candidates;
    expect(first.score).toBe(0.123456789012);
    for (const current of first.series.loop.packCurrentsA)
      expect(current).toBe(Number(current.toPrecision(6)));
  });

  it('says null for a number that is not finite, and leaves the input texts out', () => {
    const assessment = createAssessment();
    assessment.candidates[0]!.nominal.runtimeS = Number.POSITIVE_INFINITY;
    const told = results(assessment);
    expect(told.candidates[0].nominal.runtimeS).toBeNull();
    expect(Object.keys(told.inputs[0])).toEqual(['name', 'sha256']);
  });
});

describe('the schema of results.json', () => {
  it('describes every key', () => {
    const bare: string[] = [];
    const visit = (node: Node, path: string): void => {
      for (const [key, inner] of Object.entries(node.properties ?? {})) {
        if (!inner.$ref && !inner.description) bare.push(`${path}.${key}`);
        visit(inner, `${path}.${key}`);
      }
      if (node.items) visit(node.items, `${path}[]`);
    };
    visit(schema, '');
    for (const [name, node] of Object.entries(schema.$defs)) visit(node as Node, name);
    expect(bare).toEqual([]);
  });

  it('gives the unit of every figure that has one in its name', () => {
    const unitless: string[] = [];
    const units = /(Ohm|(?<!hold)S|MPerS|J|N|A|V|W|K|Kg|Db)$/;
    const visit = (node: Node): void => {
      for (const [key, inner] of Object.entries(node.properties ?? {})) {
        const isNumber = [inner.type].flat().includes('number');
        if (isNumber && units.test(key) && !inner.description?.includes('Unit: ')) unitless.push(key);
      }
    };
    for (const node of Object.values(schema.$defs)) visit(node as Node);
    expect(unitless).toEqual([]);
  });
});
