import { passesOnPaper } from '../../assess/certainty/findings.js';
import type { RatedChange } from '../../assess/certainty.js';
import type { ChangeGain, LesserChangeId } from '../../assess/lesser-changes/lesser-change.js';
import type { UnitSystem } from '../../quantity/display-units.js';
import { ounceKg } from '../../quantity/exact.js';
import { ladderChart } from '../charts/ladder-chart.js';
import { labelOf, type ReportContext } from '../context.js';
import type { Block, TableBlock, TableCell, TableRow } from '../document.js';
import { cell, figureColumn, head, onPaperCell, wordColumn } from '../tables/cells.js';
import type { Filling, Values } from '../template/fill-template.js';
import { plain } from '../template/inline.js';
import { gain as gainText, gainWithUnit, probability } from '../words/bands.js';
import { capitalised, fixed, joined, none, readings, sentence } from '../words/figures.js';
import { present } from './present.js';

/** The small changes that could spare the redesign; no section when there is no drive of today to change. */
export function beforeYouRedesignSection(context: ReportContext): Filling[] {
  const { lesserChanges, lesserChangesFrom } = context.assessment;
  if (lesserChanges.length === 0 || lesserChangesFrom === null) return [];
  const pair = lesserChanges.find((change) => change.id === 'pair' && beatsItsParts(change, lesserChanges));
  const charts = { 'lesser-changes': ladderChart(context) };
  const values: Values = {
    candidate: labelOf(context, lesserChangesFrom.candidate),
    has_pair: pair !== undefined,
    pair_title: pair?.title ?? '',
    pair_gain: pair ? gainSentence(context, pair) : '',
    ladder: { blocks: [ladderTable(context, lesserChanges)] },
    details: { blocks: details(lesserChanges) },
    left_out: { blocks: leftOut(context) },
    basis: sentence(lesserChanges[0]!.burden.basis),
  };
  return [{ values, charts: present(charts) }];
}

/** A pair that is no better than one of its two stands in the table and is no advice. */
function beatsItsParts({ parts, after }: RatedChange, all: readonly RatedChange[]): boolean {
  const single = all.filter(({ id }) => parts.some((part) => part === id));
  return single.every((change) => after.score > change.after.score);
}

function gainSentence(context: ReportContext, change: RatedChange): string {
  const { gainBands, gain, passes, passProbability } = change;
  const parts = [
    context.phrases('change-runtime', { gain: gainWithUnit(gainBands?.runtimeS, gain.runtimeS, 'minutes') }),
    context.phrases('change-score', { gain: signedScore(change) }),
    passes === false
      ? context.phrases('change-fails')
      : passProbability === null
        ? ''
        : context.phrases('change-passes', { share: probability(passProbability) }),
  ];
  return `${parts.filter((part) => part !== '').join('; ')}.`;
}

function ladderTable(context: ReportContext, changes: RatedChange[]): TableBlock {
  const { currency, phrases, units } = context;
  const mass = gainStepOf(context).shown;
  const columns = [
    wordColumn('Change', 3),
    figureColumn('Runtime', 'min', 1.1),
    figureColumn('Playing', 'min', 0.9),
    figureColumn('Holding', 'W', 1),
    figureColumn('Mass', units.mass.unit, 0.7),
    figureColumn('Cost', currency, 0.7),
    figureColumn('Work', 'h', 0.65),
    figureColumn(`Per ${mass}`, 'min', 0.85),
    figureColumn('Score', '', 1.05),
    wordColumn('Limits', 1.2),
  ];
  const rows = changes.map((change) => ladderRow(context, change));
  return {
    kind: 'table',
    title: '',
    columns,
    rows,
    note: plain(phrases('ladder-note', { mass })),
    rowHeads: true,
    compact: true,
  };
}

function ladderRow(context: ReportContext, change: RatedChange): TableRow {
  const { gain, gainBands, burden } = change;
  return {
    highlighted: change.id === 'pair',
    cells: [
      head(change.id === 'pair' ? `Pair: ${change.title}` : change.title),
      cell(gainText(gainBands?.runtimeS, gain.runtimeS, 'minutes')),
      cell(gainText(null, gain.playingTimeS, 'minutes')),
      cell(negated(gain.holdPowerW)),
      cell(gainText(null, burden.massKg, context.units.mass)),
      cell(readings.money.show(burden.costMoney)),
      cell(readings.hours.show(burden.workTimeS)),
      cell(perStep(context, change.gainPerHundredGrams)),
      cell(signedScore(change)),
      limitsCell(change),
    ],
  };
}

/** Whether all limits hold as written, and in how many draws. */
function limitsCell({ passes, passProbability }: RatedChange): TableCell {
  const share = probability(passProbability);
  if (passes === null) return cell('not judged', 'muted');
  if (passesOnPaper(passes, passProbability)) return onPaperCell('on paper', share);
  if (passes) return cell(passProbability === null ? '✓ hold' : `✓ ${share}`, 'good');
  return cell(passProbability === null ? '✗ fails' : `✗ ${share}`, 'bad');
}

/** Power that is saved, as a change of the power. */
function negated(savedW: number): string {
  if (Math.abs(savedW) < 0.005) return '0';
  return savedW > 0 ? `−${fixed(savedW, 2)}` : `+${fixed(-savedW, 2)}`;
}

/** A round mass in each system of units, for gains in proportion to it. */
const gainSteps: Record<UnitSystem, { massKg: number; shown: string }> = {
  metric: { massKg: 0.1, shown: `100${joined}g` },
  us: { massKg: 4 * ounceKg, shown: `4${joined}oz` },
};

function gainStepOf({ system }: ReportContext) {
  return gainSteps[system];
}

/** Runtime gained for each step of mass, from what is gained for each 100 g. */
function perStep(context: ReportContext, gain: ChangeGain | null): string {
  if (gain === null || gain.runtimeS === null) return none;
  return gainText(null, (gain.runtimeS * gainStepOf(context).massKg) / 0.1, 'minutes');
}

function signedScore({ gain, gainBands }: RatedChange): string {
  return gainText(gainBands?.score, gain.score, 'ratio');
}

/** What to do and what comes with it, change by change; a pair says nothing new. */
function details(changes: RatedChange[]): Block[] {
  const rows = changes
    .filter((change) => change.id !== 'pair')
    .map(
      ({ title, actions, sideEffects }): TableRow => ({
        cells: [
          head(title),
          cell(actions.map(sentence).join(' ')),
          cell(sideEffects.length === 0 ? none : sideEffects.map(sentence).join(' ')),
        ],
      }),
    );
  if (rows.length === 0) return [];
  const columns = [
    wordColumn('Change', 1.1),
    wordColumn('What to do', 2.6),
    wordColumn('What comes with it', 2.6),
  ];
  return [{ kind: 'table', title: '', columns, rows, note: [], rowHeads: true, compact: true }];
}

/** Changes as the ladder calls them, where there is no figure to name them by. */
const changeNames: Record<LesserChangeId, string> = {
  'mass-shaved': 'less mass',
  'rest-on-stop': 'power off where a stop bears the feature',
  'hold-latch': 'a latch that holds a pose',
  'slower-moves': 'slower moves',
  'much-slower-moves': 'much slower moves',
  'dimmer-lights': 'dimmer lights',
  'packs-in-turn': 'a second pack, swapped',
  'packs-in-parallel': 'packs in parallel',
  'assist-spring': 'a spring that bears part of the feature',
  'anchored-coil': 'a coil spring from an anchor above the hinge',
};

function leftOut({ assessment: { lesserChangesFrom }, phrases }: ReportContext): Block[] {
  const reasons = lesserChangesFrom?.leftOut ?? [];
  if (reasons.length === 0) return [];
  const text = reasons.map(({ id, reason }) => `${changeNames[id]}: ${reason}`).join('; ');
  return [
    {
      kind: 'paragraph',
      style: 'small',
      text: plain(`${phrases('changes-left-out')} ${capitalised(text)}.`),
    },
  ];
}
