import type { DayPlan, DaySegment } from '../../assess/day/day-plan.js';
import type { ReportContext } from '../context.js';
import { dayCandidate } from '../tables/day-tables.js';
import type { ChartContent } from '../template/fill-template.js';
import { duration, fixed, joined } from '../words/figures.js';
import { chartContent, shortened } from './chart-content.js';

/** Name of the lane in which the blocks of the day stand. */
const blockLane = 'blocks';

/** Letters that fit across the figure, about. On a narrow one the day runs downwards, and lanes share them. */
const figureLetters = { wide: 115, narrow: 46 };

/** What the word for a swap takes of them beside the lanes. */
const swapLetters = 7;

/** The day with one candidate: blocks above, one lane for each pack; null when nothing can be played. */
export function dayChart(context: ReportContext, plan: DayPlan): ChartContent | null {
  if (plan.segments.length === 0 || plan.blocks.length === 0) return null;
  const endS = plan.blocks.at(-1)!.endS;
  const lanes = [blockLane, ...plan.packs.map(({ packIndex }) => packName(context, plan, packIndex))];
  const besideLanes = plan.swaps.length > 0 ? swapLetters : 0;
  const laneLetters = Math.floor((figureLetters.narrow - besideLanes) / lanes.length);
  const noted = (startS: number, stopS: number, notes: string[]) => ({
    note: fitting(notes, Math.floor(((stopS - startS) / endS) * figureLetters.wide)),
    narrow_note: fitting(notes, laneLetters),
  });
  const percent = (fraction: number) => fixed(fraction * 100, 0);
  const blocks = plan.blocks.map(({ block, activity, startS, endS: stopS }) => ({
    lane: blockLane,
    kind: activity,
    start: startS / 60,
    end: stopS / 60,
    middle: (startS + stopS) / 120,
    ...noted(startS, stopS, [block]),
  }));
  const isCharging = ({ packIndex, startS, endS: stopS }: DaySegment) =>
    plan.charges.some(
      (charge) => charge.packIndex === packIndex && charge.startS < stopS && charge.endS > startS,
    );
  const uses = plan.segments.map((segment) => {
    const change = `${percent(segment.socStartFraction)} → ${percent(segment.socEndFraction)}${joined}%`;
    const notes = segment.powered ? [change, change.replaceAll(' ', '')] : ['no power'];
    return {
      lane: packName(context, plan, segment.packIndex),
      kind: segment.powered ? segment.activity : 'dark',
      start: segment.startS / 60,
      end: segment.endS / 60,
      middle: (segment.startS + segment.endS) / 120,
      // A pack that is charged while it stands by has the note of the charge.
      ...noted(segment.startS, segment.endS, isCharging(segment) ? [] : notes),
    };
  });
  const charges = plan.charges.map((charge) => ({
    lane: packName(context, plan, charge.packIndex),
    kind: 'charging',
    start: charge.startS / 60,
    end: charge.endS / 60,
    middle: (charge.startS + charge.endS) / 120,
    ...noted(charge.startS, charge.endS, [
      `charging to ${percent(charge.socEndFraction)}${joined}%`,
      `→ ${percent(charge.socEndFraction)}${joined}%`,
    ]),
  }));
  const rows = [...blocks, ...uses, ...charges].filter(({ start, end }) => end > start);
  const values = {
    lanes,
    rows,
    kinds: ['show', 'still', 'off', 'charging'].filter((kind) => rows.some((row) => row.kind === kind)),
    swaps: plan.swaps.map(({ timeS }) => ({ minutes: timeS / 60, label: context.phrases('day-swap') })),
    end: endS / 60,
  };
  const aspectRatio = 0.115 + 0.046 * lanes.length;
  return chartContent(context, {
    name: 'day-timeline',
    values,
    alternative: dayFinding(context, plan),
    aspectRatio,
  });
}

/** The day in words, swap by swap. */
function dayFinding(context: ReportContext, plan: DayPlan): string {
  const swaps = plan.swaps.map(({ block, timeS, inPackIndex }) =>
    context.phrases('day-swap-finding', {
      block,
      time: duration(timeS),
      pack: packName(context, plan, inPackIndex),
    }),
  );
  return [`${dayCandidate(context, plan)}: ${plan.summary}`, ...swaps].join(' ');
}

/** `pack 1`, `pack 2`; `pair 1` where two are connected side by side. */
function packName(context: ReportContext, plan: DayPlan, packIndex: number): string {
  const name = plan.packsConnectedCount === 1 ? 'pack-name' : 'pack-set-name';
  return context.phrases(name, { number: String(packIndex + 1) });
}

/** The first note that has room; words may be shortened, figures not. */
function fitting(notes: string[], letters: number): string {
  const whole = notes.find((note) => note.length <= letters);
  if (whole !== undefined) return whole;
  const words = notes.find((note) => !/\d/.test(note));
  return words !== undefined && letters >= 7 ? shortened(words, letters) : '';
}
