import type { DayPlan, DayStatus } from '../../assess/day/day-plan.js';
import { surelyDone } from '../../assess/day/drawn-day.js';
import { labelOf, planOf, type ReportContext } from '../context.js';
import type { Block, TableBlock, TableRow } from '../document.js';
import { probability } from '../words/bands.js';
import { capitalised, none, readings, sentence } from '../words/figures.js';
import { candidateTable } from './candidate-table.js';
import { cell, figureColumn, head, wordColumn } from './cells.js';

const statusWords: Record<DayStatus, { text: string; tone?: 'good' | 'bad' }> = {
  done: { text: '✓ does the day', tone: 'good' },
  'past-warning': { text: 'does it, past the warning' },
  'more-packs': { text: '✗ needs more packs', tone: 'bad' },
  'stretch-too-long': { text: '✗ a stretch is too long', tone: 'bad' },
  'cannot-play': { text: '✗ cannot play the show', tone: 'bad' },
};

/** How a day goes in few words: never a tick for what the draws do not promise. */
function dayWords({ status, doneProbability }: DayPlan): { text: string; tone?: 'good' | 'bad' } {
  const told = statusWords[status];
  if (doneProbability === null || doneProbability >= surelyDone || told.tone === 'bad') return told;
  const text = `done in ${probability(doneProbability)} of draws`;
  return doneProbability < 0.5 ? { text: `✗ ${text}`, tone: 'bad' } : { text };
}

/** How many packs a day takes: in nine draws in ten, or by the nominal figures where nothing is drawn. */
export function packsText({ doneProbability, packsSureCount, packsNeededCount }: DayPlan): string {
  const count = doneProbability === null ? packsNeededCount : packsSureCount;
  return count === null ? none : String(count);
}

/** What each block of the day takes with one candidate. */
export function blocksTable(context: ReportContext, plan: DayPlan): Block[] {
  if (plan.blocks.length === 0) return [];
  const rows = plan.blocks.map(
    ({ block, activity, startS, endS, meanCurrentA, chargeC, swapAllowed, charger }): TableRow => {
      const swaps = plan.swaps.filter((swap) => swap.block === block);
      const swapWords = swaps.length > 0 ? context.phrases('day-swap') : swapAllowed ? 'allowed' : 'no';
      return {
        cells: [
          head(block),
          cell(activity),
          cell(`${readings.minutes.show(startS)}–${readings.minutes.show(endS)}`),
          cell(readings.amperes.show(meanCurrentA)),
          cell(String(Math.round(chargeC / 3.6))),
          cell(swapWords),
          cell(charger ? 'yes' : 'no'),
        ],
      };
    },
  );
  const columns = [
    wordColumn('Block', 2),
    wordColumn('Activity', 1),
    figureColumn('From – to', 'min', 1),
    figureColumn('Mean current', 'A', 1),
    figureColumn('Takes', 'mAh', 0.9),
    wordColumn('Swap', 0.9),
    wordColumn('Charger', 0.9),
  ];
  return [{ kind: 'table', title: '', columns, rows, note: [], rowHeads: true, compact: true }];
}

/** How the day goes with every candidate. */
export function plansTable(context: ReportContext): TableBlock {
  const body = context.assessment.study.carrier.worn ? 'On body' : 'Mass';
  const toldAsBuilt = context.assessment.day?.changed == null;
  const { mass } = context.units;
  return candidateTable(context, {
    share: 2.5,
    columns: [
      wordColumn('The day', 2),
      figureColumn('Packs it takes', '', 0.8),
      figureColumn('Swaps', '', 0.7),
      figureColumn('Swapping', 'min', 0.9),
      figureColumn('Without power', 'min', 0.9),
      figureColumn('Warning to end', 'min', 0.9),
      figureColumn(`${body}, with those packs`, mass.unit, 1.1),
    ],
    cells: (candidate) => {
      const plan = planOf(context, candidate);
      const { text, tone } = plan ? dayWords(plan) : { text: none };
      return [
        cell(text, tone),
        cell(plan ? packsText(plan) : none),
        cell(plan ? String(plan.swapCount) : none),
        cell(readings.minutes.show(plan?.swapWorkTimeS)),
        cell(plan ? readings.minutes.show(plan.darkS) : none),
        cell(readings.minutes.show(plan?.warningToEndS)),
        cell(
          mass.show(plan && (plan.doneProbability === null ? plan.neededBodyMassKg : plan.sureBodyMassKg)),
        ),
      ];
    },
    highlighted: ({ id }) => toldAsBuilt && id === context.assessment.day?.candidate,
    note: context.phrases('plans-note'),
  });
}

/** What to bring, each with its reason. */
export function bringTable(plan: DayPlan): Block[] {
  if (plan.bring.length === 0) return [];
  const rows = plan.bring.map(
    ({ item, count, reason }): TableRow => ({
      cells: [cell(String(count)), head(capitalised(item)), cell(sentence(reason))],
    }),
  );
  const columns = [figureColumn('Count', '', 0.3), wordColumn('Bring', 1.6), wordColumn('Why', 4)];
  return [{ kind: 'table', title: '', columns, rows, note: [], rowHeads: false, compact: true }];
}

/** Label of the candidate whose day is told, and of the change it is told with. */
export function dayCandidate(context: ReportContext, plan: DayPlan): string {
  const { day, verdict, lesserChanges } = context.assessment;
  const label = labelOf(context, plan.candidate);
  if (plan !== day?.changed) return label;
  const change = lesserChanges.find(({ parts }) => parts.join() === verdict.change.join());
  return change === undefined
    ? label
    : context.phrases('day-with-change', { label, change: lowered(change.title) });
}

const lowered = (text: string): string => `${text.charAt(0).toLowerCase()}${text.slice(1)}`;
