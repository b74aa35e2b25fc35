import type { CandidateAssessment } from '../../assess/assessment.js';
import { listed } from '../../assess/figures.js';
import { driveCountOf } from '../../simulate/burdens.js';
import type { Candidate } from '../../study/study.js';
import type { ReportContext } from '../context.js';
import type { ChartContent } from '../template/fill-template.js';
import { withReading } from '../words/figures.js';
import { chartContent, rowLabel } from './chart-content.js';

/** What the mass on the body consists of, in the order of the bar. */
const massParts = ['drives', 'mounts', 'electronics', 'packs'] as const;
type MassPart = (typeof massParts)[number];

/** The parts of one candidate's mass in kilograms; null when its mass is not known. */
function massPartsKg(
  context: ReportContext,
  { id, nominal }: CandidateAssessment,
): Record<MassPart, number> | null {
  const { study } = context.assessment;
  const candidate = study.candidates.find((one): one is Candidate => one.id === id);
  if (nominal.bodyMassKg === null || candidate === undefined) return null;
  const { massKg, mountMassKg, electronicsMassKg } = candidate.sheet;
  const count = driveCountOf(study, candidate);
  return {
    drives: count * (massKg ?? 0),
    mounts: count * (mountMassKg ?? 0),
    electronics: count * (electronicsMassKg ?? 0),
    packs: study.packsCarriedCount * (study.pack.massKg ?? 0),
  };
}

/** Mass by part for every candidate whose mass is known, against the limit; null when none is. */
export function massChart(context: ReportContext): ChartContent | null {
  const known = context.candidates.flatMap((candidate) => {
    const parts = massPartsKg(context, candidate);
    return parts === null ? [] : [{ candidate, parts }];
  });
  if (known.length === 0) return null;
  const limitKg = context.assessment.study.criteria.find(({ id }) => id === 'body_mass')?.must?.bound ?? null;
  const { mass } = context.units;
  const longestKg = Math.max(...known.map(({ candidate }) => candidate.nominal.bodyMassKg!));
  const shownLimitKg = limitKg !== null && limitKg <= longestKg * 1.6 ? limitKg : null;
  const values = {
    rows: known.flatMap(({ candidate, parts }) =>
      massParts.map((part, order) => ({
        label: rowLabel(candidate),
        part,
        order,
        mass: mass.valueOf(parts[part]),
      })),
    ),
    sums: known.map(({ candidate }) => ({
      label: rowLabel(candidate),
      mass: mass.valueOf(candidate.nominal.bodyMassKg!),
      note: withReading(candidate.nominal.bodyMassKg, mass),
    })),
    limits:
      shownLimitKg === null
        ? []
        : [{ mass: mass.valueOf(shownLimitKg), label: `limit ${withReading(limitKg, mass)}` }],
    domain_end: mass.valueOf(Math.max(longestKg * 1.2, (shownLimitKg ?? 0) * 1.08)),
    mass_unit: mass.unit,
  };
  const aspectRatio = 0.1 + 0.034 * known.length;
  return chartContent(context, {
    name: 'mass-by-part',
    values,
    alternative: massFinding(context),
    aspectRatio,
  });
}

/** What each candidate weighs with the packs that come along. */
function massFinding(context: ReportContext): string {
  const known = context.candidates.filter(({ nominal }) => nominal.bodyMassKg !== null);
  const each = known.map(
    ({ label, nominal }) => `${label} ${withReading(nominal.bodyMassKg, context.units.mass)}`,
  );
  return context.phrases('mass-finding', { each: listed(each) });
}
