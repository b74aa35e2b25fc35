import type { Criterion, Measurement } from '../study/choosing.js';
import { type Air, type Carrier, type Feature, noSpring, type Space } from '../study/feature.js';
import type { Provenance } from '../study/provenance.js';
import type { DayBlock, Show } from '../study/show.js';
import type { About, Candidate, Study, TriedChange } from '../study/study.js';
import type { Load, Pack, Wiring } from '../study/supply.js';
import type { PropertyValue, RowReading } from './row-reading.js';

/** The parts of a study that has no errors. */
export interface StudyParts {
  items: RowReading;
  packs: Pack[];
  loads: Load[];
  show: Show;
  candidates: Candidate[];
  criteria: Criterion[];
  day: DayBlock[];
  measured: Measurement[];
  provenance: Provenance[];
  tried: TriedChange[];
}

/** What a slide has in place of the hinge's figures, and the other way round. */
const neutralFeature: Partial<Feature> = {
  balanceDistanceM: 0,
  tipDistanceM: 0,
  tipScaleKg: null,
  inertiaKgM2: null,
  shape: 'unknown',
  inclineRad: 0,
  axisTiltRad: 0,
  latchPosition: null,
};

const noTexts: About = { question: '', project: '', preparedBy: '', preparedFor: '', date: '', currency: '' };

/** Puts the parts together; the field declarations say where each value of study.csv goes. */
export function buildStudy(parts: StudyParts): Study {
  const { items, packs, loads, show, candidates, criteria, day, measured, provenance, tried } = parts;
  const under = (prefix: string) => partOf(items.values, prefix);
  const single = (property: string) => items.values.get(property) ?? null;
  const spring = { ...noSpring, ...known(under('feature.spring.')) };
  return {
    about: { ...noTexts, ...known(under('about.')) } as About,
    feature: { ...neutralFeature, ...known(under('feature.')), spring } as unknown as Feature,
    carrier: under('carrier.') as unknown as Carrier,
    air: under('air.') as unknown as Air,
    space: under('space.') as unknown as Space,
    wiring: under('wiring.') as unknown as Wiring,
    packs,
    pack: packs.find(({ id }) => id === single('pack.id'))!,
    packsCarriedCount: single('packsCarriedCount') as number,
    packTemperatureK: single('packTemperatureK') as number,
    loads,
    show,
    candidates,
    baselineId: single('baselineId') as string | null,
    targetRuntimeS: single('targetRuntimeS') as number | null,
    eventsPerYearCount: single('eventsPerYearCount') as number,
    hourPriceMoney: single('hourPriceMoney') as number,
    criteria,
    day,
    measured,
    drawsCount: single('drawsCount') as number,
    seed: single('seed') as number,
    provenance,
    ...(tried.length > 0 && { tried }),
  };
}

/** The values whose path starts with a prefix, without it; deeper paths are left out. */
function partOf(values: ReadonlyMap<string, PropertyValue>, prefix: string): Record<string, PropertyValue> {
  const part: Record<string, PropertyValue> = {};
  for (const [path, value] of values) {
    const name = path.startsWith(prefix) ? path.slice(prefix.length) : '.';
    if (!name.includes('.')) part[name] = value;
  }
  return part;
}

function known(part: Record<string, PropertyValue>): Record<string, PropertyValue> {
  return Object.fromEntries(Object.entries(part).filter(([, value]) => value !== null));
}
