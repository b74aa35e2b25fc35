import type { CalculationLine, CandidateAssessment } from '../../assess/assessment.js';
import { listed } from '../../assess/figures.js';
import { working } from '../../assess/working.js';
import type { CandidateRun } from '../../simulate/outcome.js';
import type { ReportContext } from '../context.js';
import type { Block } from '../document.js';
import type { Filling, Values } from '../template/fill-template.js';
import { banded } from '../words/bands.js';
import { capitalised, counted, readings, trueMinus } from '../words/figures.js';
import { resultsAlsoIn } from '../words/restated.js';

/** From data sheet to minutes for who leads and what exists today; one section, left out where nothing is worked. */
export function workingSection(context: ReportContext): Filling[] {
  const blocks = context.focus.flatMap((candidate) => candidateWorking(context, candidate));
  if (blocks.length === 0) return [];
  const values: Values = {
    candidates: listed(context.focus.map(({ label }) => label)),
    apart: apartWords(context),
    not_si: context.system !== 'metric',
    believed: context.assessment.believed !== null,
    working: { blocks },
  };
  return [{ values, charts: {} }];
}

function candidateWorking(context: ReportContext, candidate: CandidateAssessment): Block[] {
  const lines = linesOf(context, candidate);
  if (lines.length === 0) return [];
  const heading: Block = {
    kind: 'heading',
    level: 2,
    text: `${candidate.rank}. ${candidate.label}`,
    id: `working-${candidate.id}`,
  };
  const sections = [...new Set(lines.map(({ section }) => section))];
  const holds = sections.filter((section) => section.startsWith('Hold '));
  // One hold shows how all are worked.
  const shown = sections.filter((section) => section === holds[0] || !holds.includes(section));
  return [
    heading,
    ...findingLine(context, candidate),
    ...shown.flatMap((section): Block[] => [
      { kind: 'heading', level: 3, text: section, id: `working-${candidate.id}-${section}` },
      ...lines.filter((line) => line.section === section).map(calculation),
      ...(section === holds[0] ? otherHolds(context, holds.slice(1)) : []),
    ]),
  ];
}

function otherHolds(context: ReportContext, holds: string[]): Block[] {
  if (holds.length === 0) return [];
  const text = context.phrases('working-holds', { holds: holds.map((hold) => hold.slice(5)).join(', ') });
  return [{ kind: 'paragraph', style: 'small', text: [{ text }] }];
}

function calculation({ quantity, equation, numbers, result, source }: CalculationLine): Block {
  return {
    kind: 'calculation',
    quantity,
    equation: trueMinus(equation),
    numbers: trueMinus(numbers),
    result: trueMinus(result),
    source,
  };
}

function linesOf(context: ReportContext, assessed: CandidateAssessment): CalculationLine[] {
  const { believed, protection } = context.assessment;
  const study = believed ?? context.assessment.study;
  const candidate = study.candidates.find(({ id }) => id === assessed.id);
  if (candidate === undefined) return [];
  const demand = protection.find((entry) => entry.candidate === assessed.id);
  const run: CandidateRun = {
    ...assessed,
    demand: {
      peakCurrentA: demand?.peakCurrentA ?? null,
      tenSecondCurrentA: demand?.tenSecondCurrentA ?? null,
      meanCurrentA: demand?.meanCurrentA ?? null,
      startUpCurrentA: demand?.startUpCurrentA ?? null,
    },
    failures: [],
  };
  return resultsAlsoIn(context.system, study, working(study, candidate, run));
}

/** Where the sheet itself is doubted, the working follows it all the same. */
function findingLine(context: ReportContext, { findings }: CandidateAssessment): Block[] {
  const doubted = findings.filter(({ severity }) => severity !== 'note');
  if (doubted.length === 0) return [];
  const text = context.phrases('working-findings', { findings: counted(doubted.length, 'finding') });
  return [{ kind: 'paragraph', style: 'small', text: [{ text }] }];
}

const outcomeReadings = {
  runtimeS: { name: 'runtime', reading: 'minutes' },
  holdPowerW: { name: 'power while holding', reading: 'watts' },
  meanPackCurrentA: { name: 'mean pack current', reading: 'amperes' },
  torqueMarginRatio: { name: 'torque margin', reading: 'ratio' },
  windingTemperatureK: { name: 'winding temperature', reading: 'temperature' },
} as const;

/** Nominal figures that stand apart from the middle of their draws, said in one line. */
function apartWords(context: ReportContext): string {
  const apart = context.assessment.certainty?.nominalApart ?? [];
  const told = context.focus.flatMap(({ id, label }) => {
    const own = apart.flatMap(({ candidate, outcome, nominal, median }) => {
      if (candidate !== id || !Object.hasOwn(outcomeReadings, outcome)) return [];
      const { name, reading } = outcomeReadings[outcome as keyof typeof outcomeReadings];
      const shown = reading === 'temperature' ? context.units.temperature : readings[reading];
      const figures = `${banded(null, nominal, shown)} against ${banded(null, median, shown)}`;
      return [`${name} ${figures}${shown.unit === '' ? '' : `\u00a0${shown.unit}`}`];
    });
    return own.length === 0 ? [] : [`${label}: ${own.join(', ')}`];
  });
  return capitalised(told.join('; '));
}
