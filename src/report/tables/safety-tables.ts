import type { CandidateAssessment } from '../../assess/assessment.js';
import { displaySystems } from '../../quantity/display-units.js';
import { formatQuantity } from '../../quantity/format.js';
import type { PowerCutOutcome } from '../../simulate/outcome.js';
import { landingGiveM } from '../../simulate/power-cut.js';
import type { ReportContext } from '../context.js';
import type { TableBlock, TableRow } from '../document.js';
import { type Reading, readings } from '../words/figures.js';
import { heatReadings } from '../words/survivable.js';
import { cell, figureColumn, groupRow, row, wordColumn } from './cells.js';
import { type FigureRow, figure, words } from './figure-table.js';
import type { OutcomeGroup } from './outcome-groups.js';
import { positionText } from './show-tables.js';

/** What happens when the power goes at the hold that is told, with both states of the motor leads. */
export function powerCutTable(context: ReportContext, { nominal }: CandidateAssessment): TableBlock {
  const { units, phrases } = context;
  const isHinge = context.assessment.study.feature.kind === 'hinge';
  const moving = isHinge ? 'Tip' : 'Speed';
  const states = [nominal.powerCut, nominal.powerCut.shorted];
  const deciding = states[nominal.powerCut.decides === 'shorted' ? 1 : 0];
  const line = (name: string, show: (state: PowerCutOutcome) => string, unit = ''): TableRow =>
    row(cell(name), ...states.map((state) => cell(show(state))), cell(unit));
  const read = (name: string, key: keyof PowerCutOutcome, reading: Reading): TableRow =>
    line(name, (state) => reading.show(state[key] as number | null), reading.unit);
  const yes = (value: boolean): string => (value ? 'yes' : 'no');
  const rows = [
    groupRow(`Power cut at ${positionText(context, deciding!.fromPosition)}`),
    row(cell('Motor leads', 'muted'), cell('open', 'muted'), cell('shorted', 'muted'), cell('')),
    line('This one decides', (state) => yes(state === deciding)),
    line('Stays at every hold', (state) => yes(state.stays)),
    line('Stays when shaken', (state) => yes(state.staysWhenShaken)),
    ...(states.some(({ towards }) => towards === 'upper')
      ? [line('Pulled to the stop', (state) => state.towards)]
      : []),
    read('Falls to the stop in', 'fallS', readings.seconds),
    read(`${moving} at the stop`, 'tipSpeedMPerS', units.speed),
    read(`${moving} at most`, 'largestTipSpeedMPerS', units.speed),
    read('Energy at the stop', 'impactEnergyJ', readings.joules),
    read(
      phrases('tip-force', {
        give: formatQuantity(landingGiveM, 'length', displaySystems[context.system], 2),
      }),
      'tipForceN',
      units.force,
    ),
  ];
  const columns = [
    wordColumn('', 2.6),
    figureColumn('', '', 0.9),
    figureColumn('', '', 1),
    wordColumn('', 0.7),
  ];
  return { kind: 'table', title: '', columns, rows, note: [], rowHeads: true, compact: true };
}

/** What it takes to push the feature off its pose, and how hard it can press. */
export function pushOutcomes(
  { units, assessment }: ReportContext,
  { nominal }: CandidateAssessment,
): OutcomeGroup {
  const isHinge = assessment.study.feature.kind === 'hinge';
  const yields = (name: string, force: number | null): FigureRow =>
    force === null ? words(name, 'does not yield') : figure(name, force, units.force);
  return {
    title: isHinge ? 'Push at the tip, and crush' : 'Push, and crush',
    rows: [
      yields('Yields down, powered', nominal.pushDownN),
      yields('Yields up, powered', nominal.pushUpN),
      yields('Yields down, power off', nominal.unpoweredPushDownN),
      yields('Yields up, power off', nominal.unpoweredPushUpN),
      figure(isHinge ? 'Crush near the hinge' : 'Crush', nominal.crushForceN, units.force),
      ...(isHinge ? [figure('Crush at the tip', nominal.crushForceAtTipN, units.force)] : []),
    ],
  };
}

/** Winding and case, in the show and if the first hold never ended. */
export function heatOutcomes(context: ReportContext, candidate: CandidateAssessment): OutcomeGroup {
  const { nominal } = candidate;
  const reads = heatReadings(context, candidate);
  const forever = (name: string, value: number | null, reading: Reading): FigureRow =>
    value === null && nominal.thermalRunaway ? words(name, 'never settles') : figure(name, value, reading);
  return {
    title: 'Heat',
    rows: [
      figure('Winding, in the show', nominal.windingTemperatureK, reads.winding),
      figure('Case, in the show', nominal.caseTemperatureK, reads.case),
      forever('Winding, held for ever', nominal.settledHoldWindingK, reads.winding),
      forever('Case, held for ever', nominal.settledHoldCaseK, reads.case),
      figure('Holds until its limit', nominal.timeToLimitHoldingS, 'minutes'),
      figure('On-time, worst window', nominal.onShareFraction, 'percent'),
    ],
  };
}
