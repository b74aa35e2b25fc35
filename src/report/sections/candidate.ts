import type { CandidateAssessment } from '../../assess/assessment.js';
import { goesTo, unpoweredWords } from '../../assess/unpowered-words.js';
import type { Finding } from '../../drives/finding.js';
import { driveTypes } from '../../drives/registry.js';
import type { DriveSheet } from '../../drives/sheet.js';
import { decidingPowerCut } from '../../simulate/outcome.js';
import type { Provenance } from '../../study/provenance.js';
import { bandOf, type ReportContext } from '../context.js';
import type { Block, Fact } from '../document.js';
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
import { probability } from '../words/bands.js';
import { capitalised, duration, fixed, sentence } from '../words/figures.js';
import {
  fieldWords,
  inputName,
  lockingWords,
  noRuntimeReason,
  withCurrency,
} from '../words/outcome-words.js';
import { heatReadings } from '../words/survivable.js';
import { cautionLine } from './cautions.js';

/** One page per candidate, in rank order. */
export function candidateSections(context: ReportContext): Filling[] {
  return context.candidates.map((candidate) => ({ values: candidateValues(context, candidate), charts: {} }));
}

function candidateValues(context: ReportContext, candidate: CandidateAssessment): Values {
  const { nominal } = candidate;
  const left = [packOutcomes(candidate), holdOutcomes(context, candidate), heatOutcomes(context, candidate)];
  const middle = [
    moveOutcomes(candidate),
    motorOutcomes(context, candidate),
    costOutcomes(context, candidate),
  ];
  const right = [pushOutcomes(context, candidate), energyOutcomes(candidate)];
  const source = context.assessment.study.candidates.find((one) => one.id === candidate.id)?.sheet;
  return {
    label: candidate.label,
    id: candidate.id,
    type: capitalised(driveTypes[candidate.type].label),
    rank: String(candidate.rank),
    of: String(context.candidates.length),
    as_built: candidate.isBaseline,
    score: fixed(candidate.score, 2),
    runs: nominal.runtimeS !== null,
    runtime: duration(nominal.runtimeS),
    no_runtime_reason: nominal.runtimeS === null ? noRuntimeReason(candidate) : '',
    unpowered: unpoweredValue(context, candidate),
    gears: lockingWords[nominal.locking],
    source_line: sourceLine(context, source),
    listed: { blocks: listedFacts(context, candidate) },
    findings: { blocks: findingBlocks(candidate.findings.filter((one) => !isOfUse(one))) },
    in_use: { blocks: findingBlocks(findingsInUse(context, candidate)) },
    assumed: { blocks: assumedList(candidate) },
    limits: { blocks: candidate.limits.length === 0 ? [] : [limitsTable(context, candidate)] },
    outcomes_left: { blocks: [figureTable(left)] },
    outcomes_middle: { blocks: [figureTable(middle)] },
    outcomes_right: { blocks: [powerCutTable(context, candidate), figureTable(right)] },
    cautions: cautionLine(context, candidate.id),
  };
}

/** What it does without power by the nominal figures, and how often it falls in the draws where that is not the same. */
function unpoweredValue(context: ReportContext, candidate: CandidateAssessment): string {
  const powerCut = decidingPowerCut(candidate.nominal);
  const { kind } = context.assessment.study.feature;
  const does = unpoweredWords(powerCut, kind);
  const share = bandOf(candidate, 'fallS')?.occursFraction ?? 0;
  if (powerCut.fallS !== null || share < 0.005) return does;
  const falls = goesTo(powerCut.towards, kind);
  return context.phrases('unpowered-may-fall', { does, falls, share: probability(share) });
}

/** Where the figures come from, with the maker's own note; empty when nobody said. */
function sourceLine({ phrases }: ReportContext, sheet: DriveSheet | undefined): string {
  const source = [sheet?.source, sheet?.sourceDate].filter(Boolean).join(', ');
  const parts = [source === '' ? '' : phrases('source-line', { source }), sentence(sheet?.note ?? '')];
  return parts.filter((part) => part !== '').join(' ');
}

/** What the candidates file says, as written there; what it was read as stands on the input pages. */
function listedFacts(context: ReportContext, candidate: CandidateAssessment): Block[] {
  const { provenance, candidates } = context.assessment.study;
  const extra = candidates.find((one) => one.id === candidate.id)?.extra ?? {};
  const facts = provenance
    .filter(
      ({ owner, origin, path }) =>
        owner === candidate.id && origin === 'given' && path.startsWith('candidates.'),
    )
    .filter(({ field }) => !['id', 'label', 'type', 'note', 'source', 'source_date'].includes(field))
    .map((entry) => listedFact(context, entry));
  const own = Object.entries(extra).map(([label, value]): Fact => ({ label: fieldWords(label), value }));
  return facts.length + own.length === 0 ? [] : [{ kind: 'facts', columns: 3, items: [...facts, ...own] }];
}

function listedFact({ currency, assessment }: ReportContext, entry: Provenance): Fact {
  const { field, written, shown } = entry;
  const label = inputName(entry, assessment.study.provenance);
  return { label, value: withCurrency(field, written ?? shown, currency) };
}

const findingWords: Record<Finding['severity'], string> = {
  impossible: 'Cannot be',
  odd: 'Doubtful',
  note: 'Note',
};

/** What came out of the computation, where the listing itself may well be true. */
const isOfUse = ({ code }: Finding): boolean =>
  ['slower-when-warm', 'cannot-hold-when-warm', 'passes-on-paper', 'unpowered-hold-not-honoured'].includes(
    code,
  );

/** What was computed with a winding past its limit is of no use: there is no such drive any more. */
function findingsInUse(context: ReportContext, candidate: CandidateAssessment): Finding[] {
  const isBurnt = (candidate.nominal.windingTemperatureK ?? 0) > heatReadings(context, candidate).windingEndK;
  return candidate.findings.filter((one) => isOfUse(one) && !(isBurnt && one.code.endsWith('-when-warm')));
}

function findingBlocks(findings: Finding[]): Block[] {
  if (findings.length === 0) return [];
  const order: Finding['severity'][] = ['impossible', 'odd', 'note'];
  const sorted = [...findings].sort((a, b) => order.indexOf(a.severity) - order.indexOf(b.severity));
  const items = sorted.map(({ severity, message }) => [
    { text: `${findingWords[severity]}. `, strong: true },
    ...plain(message),
  ]);
  return [{ kind: 'list', ordered: false, items, style: 'small' }];
}

function assumedList({ assumed }: CandidateAssessment): Block[] {
  if (assumed.length === 0) return [];
  const items = assumed.map(({ field, shown, basis }) => [
    { text: `${capitalised(fieldWords(field))} ${shown}`, strong: true },
    ...plain(basis === '' ? '' : `: ${basis}`),
  ]);
  return [{ kind: 'list', ordered: false, items, style: 'small' }];
}
