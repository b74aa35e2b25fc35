import { listed } from '../../assess/figures.js';
import { carefulForceN, severeForceN } from '../../assess/thresholds.js';
import { bandOf, type ReportContext, roleOf } from '../context.js';
import type { ChartContent } from '../template/fill-template.js';
import { bandedWithUnit } from '../words/bands.js';
import { none, withReading } from '../words/figures.js';
import { brokenLabel, chartContent, rankedLabel } from './chart-content.js';

/** Letters per line beside a chart of half the page's width. */
const labelWidth = 22;

/** How hard each drive can squeeze, against the forces that people bear; null when nobody's is known. */
export function crushChart(context: ReportContext): ChartContent | null {
  const known = context.candidates.filter(({ nominal }) => nominal.crushForceN !== null);
  if (known.length === 0) return null;
  const { force } = context.units;
  const rows = known.map((candidate) => {
    const band = bandOf(candidate, 'crushForceN');
    const forceN = band?.median ?? candidate.nominal.crushForceN!;
    return {
      label: brokenLabel(rankedLabel(candidate), labelWidth),
      force: force.valueOf(forceN),
      low: force.valueOf(band?.p10 ?? forceN),
      high: force.valueOf(band?.p90 ?? forceN),
      role: roleOf(context, candidate),
      note: bandedWithUnit(band, candidate.nominal.crushForceN, force),
    };
  });
  const line = (word: string, forceN: number, row: number) => ({
    force: force.valueOf(forceN),
    label: `${word} ${withReading(forceN, force)}`,
    row,
  });
  const lines = [line('care', carefulForceN, 0), line('severe', severeForceN, 1)];
  const longest = Math.max(lines[1]!.force, ...rows.map(({ high }) => high));
  const values = { rows, lines, domain_end: longest * 1.75, force_unit: force.unit };
  const aspectRatio = halfPageHeight(rows.length);
  return chartContent(context, {
    name: 'crush-force',
    values,
    alternative: crushFinding(context),
    aspectRatio,
  });
}

/** Height of a chart of rows that stands beside another, as a share of the page's width. */
export function halfPageHeight(rowCount: number): number {
  return 0.085 + 0.041 * Math.max(2, rowCount);
}

/** Who can squeeze with how much. */
function crushFinding(context: ReportContext): string {
  const known = context.candidates.filter(({ nominal }) => nominal.crushForceN !== null);
  if (known.length === 0) return none;
  return context.phrases('crush-finding', {
    each: listed(
      known.map(
        (candidate) =>
          `${candidate.label} ${bandedWithUnit(bandOf(candidate, 'crushForceN'), candidate.nominal.crushForceN, context.units.force)}`,
      ),
    ),
    careful: withReading(carefulForceN, context.units.force),
    severe: withReading(severeForceN, context.units.force),
  });
}
