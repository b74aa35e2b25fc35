import type { CandidateAssessment } from '../../assess/assessment.js';
import type { Finding } from '../../drives/finding.js';
import { driveTypes } from '../../drives/registry.js';
import type { Provenance } from '../../study/provenance.js';
import type { ReportContext } from '../context.js';
import type { Block, Fact } from '../document.js';
import { wordColumn, cell, head, row } from '../tables/cells.js';
import { figureTable } from '../tables/figure-table.js';
import { limitsTable } from '../tables/limits-table.js';
import {
  costOutcomes,
  energyOutcomes,
  holdOutcomes,
  motorOutcomes,
  moveOutcomes,
  packOutcomes,
} from '../tables/outcome-groups.js';
import { heatOutcomes, powerCutTable, pushOutcomes } from '../tables/safety-tables.js';
import type { Filling, Values } from '../template/fill-template.js';
import { plain } from '../template/inline.js';
import { capitalised, duration, fixed, joined } from '../words/figures.js';
import { fieldWords, lockingWords, noRuntimeReason } from '../words/outcome-words.js';
import { limitsSummary } from '../words/outcome-words.js';
import { candidateCautions } from './cautions.js';

/** One page per candidate, in rank order. */
export function candidateSections(context: ReportContext): Filling[] {
  return context.candidates.map((candidate) => ({ values: candidateValues(context, candidate), charts: {} }));
}

function candidateValues(context: ReportContext, candidate: CandidateAssessment): Values {
  const { nominal } = candidate;
  const left = [packOutcomes(candidate), holdOutcomes(candidate), heatOutcomes(candidate)];
  const middle = [moveOutcomes(candidate), motorOutcomes(candidate), costOutcomes(candidate, context.currency)];
  const right = [pushOutcomes(candidate), energyOutcomes(candidate)];
  const source = context.assessment.study.candidates.find((one) => one.id === candidate.id)?.sheet;
  return {
    label: candidate.label,
    id: candidate.id,
    type: capitalised(driveTypes[candidate.type].label),
    rank: String(candidate.rank),
    of: String(context.candidates.length),
    as_built: candidate.isBaseline,
    score: fixed(candidate.score, 2),
    limits_summary: limitsSummary(candidate).text,
    runs: nominal.runtimeS !== null,
    runtime: duration(nominal.runtimeS),
    no_runtime_reason: nominal.runtimeS === null ? noRuntimeReason(candidate) : '',
    locking: lockingWords[nominal.locking],
    source: [source?.source, source?.sourceDate].filter(Boolean).join(', '),
    note: source?.note ?? '',
    listed: { blocks: listedFacts(context, candidate) },
    findings: { blocks: findingBlocks(candidate.findings) },
    assumed: { blocks: assumedTable(candidate) },
    limits: { blocks: candidate.limits.length === 0 ? [] : [limitsTable(context, candidate)] },
    outcomes_left: { blocks: [figureTable(left)] },
    outcomes_middle: { blocks: [figureTable(middle)] },
    outcomes_right: { blocks: [powerCutTable(candidate), figureTable(right)] },
    cautions: { blocks: candidateCautions(context, candidate.id) },
  };
}

/** What the candidates file says, as written there, with what it was read as. */
function listedFacts(context: ReportContext, candidate: CandidateAssessment): Block[] {
  const { provenance, candidates } = context.assessment.study;
  const extra = candidates.find((one) => one.id === candidate.id)?.extra ?? {};
  const facts: Fact[] = provenance
    .filter((entry) => entry.owner === candidate.id && entry.path.startsWith('candidates.') && entry.origin === 'given')
    .filter((entry) => !['id', 'label', 'type', 'note', 'source', 'source_date'].includes(entry.field))
    .map((entry) => listedFact(context, entry));
  const own = Object.entries(extra).map(([label, value]) => fact(fieldWords(label), value, value));
  return facts.length + own.length === 0 ? [] : [{ kind: 'facts', columns: 3, items: [...facts, ...own] }];
}

function listedFact({ currency }: ReportContext, { field, written, shown }: Provenance): Fact {
  const isMoney = ['price', 'extra_cost'].includes(field) && currency !== '';
  const unit = isMoney ? `${joined}${currency}` : '';
  return fact(fieldWords(field), `${written ?? shown}${unit}`, `${shown}${unit}`);
}

function fact(label: string, written: string, shown: string): Fact {
  const same = squeezed(written) === squeezed(shown) || shown === '';
  return { label, value: written, ...(same ? {} : { note: `= ${shown}` }) };
}

function squeezed(text: string): string {
  return text.replace(/\s/g, '').toLowerCase();
}

const findingWords: Record<Finding['severity'], string> = {
  impossible: 'Cannot be',
  odd: 'Odd',
  note: 'Note',
};

function findingBlocks(findings: Finding[]): Block[] {
  if (findings.length === 0) return [];
  const order: Finding['severity'][] = ['impossible', 'odd', 'note'];
  const sorted = [...findings].sort((a, b) => order.indexOf(a.severity) - order.indexOf(b.severity));
  const items = sorted.map(({ severity, message }) => [
    { text: `${findingWords[severity]}. `, strong: true },
    ...plain(message),
  ]);
  return [{ kind: 'list', ordered: false, items }];
}

function assumedTable({ assumed }: CandidateAssessment): Block[] {
  if (assumed.length === 0) return [];
  const rows = assumed.map(({ field, shown, basis }) => row(head(fieldWords(field)), cell(shown), cell(basis)));
  const columns = [wordColumn('Figure', 1.6), wordColumn('Taken as', 1.6), wordColumn('Because', 3.6)];
  return [{ kind: 'table', title: '', columns, rows, note: [], rowHeads: true, compact: true }];
}
