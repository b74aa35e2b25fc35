import type { CandidateAssessment, LimitOutcome } from '../../assess/assessment.js';
import type { Band } from '../../assess/certainty.js';
import { limitName } from '../../assess/criterion-words.js';
import { unpoweredWords } from '../../assess/unpowered-words.js';
import type { Dimension } from '../../quantity/dimension.js';
import { unitOf } from '../../quantity/unit-table.js';
import { decidingPowerCut } from '../../simulate/outcome.js';
import type { Results } from '../results.js';
import { cleanText } from '../words/clean.js';
import { limitDemand } from '../words/criterion-words.js';
import { displayReadings } from '../words/figures.js';
import { endReasonWords, lockingWords } from '../words/outcome-words.js';
import { type ExportedOutcome, exportedOutcomes } from './exported-outcomes.js';

/** A cell for a spreadsheet: a number stays one; null is blank. */
export type ExportCell = string | number | null;

/** The ranking as a spreadsheet gets it: one row per candidate, units in the header. */
export interface ExportTable {
  header: string[];
  rows: ExportCell[][];
}

interface Column {
  header: string;
  cell(candidate: Results['candidates'][number]): ExportCell;
}

/** Everything that is known of the candidates, in rank order. */
export function exportTable(results: Results): ExportTable {
  const columns = [
    ...candidateColumns(results),
    ...exportedOutcomes.flatMap((outcome) => outcomeColumns(outcome, results)),
    ...limitColumns(results),
    ...ownColumns(results),
  ];
  return {
    header: columns.map(({ header }) => cleanText(header)),
    rows: results.candidates.map((candidate) =>
      columns.map(({ cell }) => {
        const value = cell(candidate);
        return typeof value === 'string' ? cleanText(value) : value;
      }),
    ),
  };
}

function candidateColumns({ certainty, study }: Results): Column[] {
  const { kind } = study.feature;
  const drawn = ({ id }: CandidateAssessment) => certainty?.candidates[id];
  return [
    { header: 'rank', cell: ({ rank }) => rank },
    { header: 'id', cell: ({ id }) => id },
    { header: 'label', cell: ({ label }) => label },
    { header: 'type', cell: ({ type }) => type },
    { header: 'exists today', cell: ({ isBaseline }) => yesNo(isBaseline) },
    { header: 'passes every limit', cell: ({ passes }) => yesNo(passes) },
    { header: 'score', cell: ({ score }) => rounded(score) },
    { header: 'share leading [%]', cell: (one) => percent(drawn(one)?.leadProbability) },
    { header: 'share passing [%]', cell: (one) => percent(drawn(one)?.passProbability) },
    {
      header: 'run ends by',
      cell: ({ nominal }) => (nominal.endReason ? endReasonWords[nominal.endReason] : null),
    },
    { header: 'without power', cell: ({ nominal }) => unpoweredWords(decidingPowerCut(nominal), kind) },
    { header: 'its gears', cell: ({ nominal }) => lockingWords[nominal.locking] },
    { header: 'fits its space', cell: ({ nominal }) => yesNo(nominal.fits) },
  ];
}

/** The figure as it stands; with draws also its band, and how often it occurs where that is not always. */
function outcomeColumns(exported: ExportedOutcome, { certainty, candidates, study }: Results): Column[] {
  const { name, dimension, outcome, nominal } = exported;
  const unit = exported.unit ?? study.about.currency;
  const inUnit = (value: number | null) => shown(value, dimension, exported.unit ?? '');
  const figure: Column = { header: withUnit(name, unit), cell: (candidate) => inUnit(nominal(candidate)) };
  if (certainty === null || outcome === null) return [figure];
  const band = (candidate: CandidateAssessment): Band | null => candidate.uncertain[outcome] ?? null;
  const points = (['p10', 'median', 'p90'] as const).map(
    (point): Column => ({
      header: withUnit(`${name} ${point}`, unit),
      cell: (candidate) => inUnit(band(candidate)?.[point] ?? null),
    }),
  );
  const isRare = candidates.some((candidate) => (band(candidate)?.occursFraction ?? 0) < 1);
  const share: Column = {
    header: `${name} occurs in [%]`,
    cell: (candidate) => percent(band(candidate)?.occursFraction ?? 0),
  };
  return [figure, ...points, ...(isRare ? [share] : [])];
}

/** Three columns for each limit that any candidate is held against. */
function limitColumns({ certainty, candidates, study }: Results): Column[] {
  const all = candidates.flatMap(({ limits }) => limits);
  const names = [...new Set(all.map(({ criterion }) => criterion))];
  return names.flatMap((name): Column[] => {
    const indexIn = ({ limits }: CandidateAssessment) =>
      limits.findIndex(({ criterion }) => criterion === name);
    const limitOf = (candidate: CandidateAssessment): LimitOutcome | undefined =>
      candidate.limits[indexIn(candidate)];
    const demand = limitDemand(all.find(({ criterion }) => criterion === name)!, {
      currency: study.about.currency,
      units: displayReadings.metric,
    });
    const title = `limit: ${limitName(name)}${/\d/.test(demand) ? ` ${demand}` : ''}`;
    const columns: Column[] = [
      { header: title, cell: (candidate) => verdict(limitOf(candidate)) },
      { header: `${title}, margin [%]`, cell: (candidate) => percent(limitOf(candidate)?.margin) },
    ];
    if (certainty === null) return columns;
    const share = (candidate: CandidateAssessment) =>
      certainty.candidates[candidate.id]?.limitProbabilities[indexIn(candidate)];
    return [...columns, { header: `${title}, holds in [%]`, cell: (candidate) => percent(share(candidate)) }];
  });
}

/** The user's own columns, as written. */
function ownColumns({ study }: Results): Column[] {
  const names = [...new Set(study.candidates.flatMap(({ extra }) => Object.keys(extra)))];
  const extraOf = (id: string) => study.candidates.find((candidate) => candidate.id === id)?.extra;
  return names.map((header) => ({ header, cell: ({ id }) => extraOf(id)?.[header] ?? null }));
}

function shown(value: number | null, dimension: Dimension, unit: string): number | null {
  return value === null ? null : rounded(unit === '' ? value : unitOf(unit, dimension).fromSi(value));
}

function percent(share: number | null | undefined): number | null {
  return share === null || share === undefined ? null : rounded(share * 100);
}

/** Six digits that count: more than any figure deserves, and no last bits of a computer. */
function rounded(value: number): number | null {
  return Number.isFinite(value) ? Number(value.toPrecision(6)) : null;
}

function yesNo(value: boolean | null): string {
  return value === null ? 'not judged' : value ? 'yes' : 'no';
}

/** Blank where the candidate is not held against the limit. */
function verdict(limit: LimitOutcome | undefined): string | null {
  return limit === undefined ? null : yesNo(limit.passes);
}

function withUnit(name: string, unit: string): string {
  return unit === '' ? name : `${name} [${unit}]`;
}
