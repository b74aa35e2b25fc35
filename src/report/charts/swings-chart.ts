import type { InputSwing } from '../../assess/certainty.js';
import { labelOf, type ReportContext } from '../context.js';
import type { ChartContent } from '../template/fill-template.js';
import { fixed, none } from '../words/figures.js';
import { ownerWords } from '../words/next-measurement.js';
import { brokenLabel, chartContent, shortened, titleLines } from './chart-content.js';

/** More inputs than these move the lead by little. */
const mostRows = 8;

/** What each input's 10–90 % range does to the leader's lead in score; null without draws. */
export function swingsChart(context: ReportContext): ChartContent | null {
  const sensitivity = context.assessment.certainty?.sensitivity;
  if (!sensitivity) return null;
  const swings = shownSwings(sensitivity.swings);
  if (swings.length === 0) return null;
  const lead = nominalLead(context);
  const moved = [lead, ...swings.flatMap(({ leadAtLow, leadAtHigh }) => [leadAtLow, leadAtHigh])];
  const isNear = turnIsNear(moved);
  const ends = isNear ? [0, ...moved] : moved;
  const [least, most] = [Math.min(...ends), Math.max(...ends)];
  const span = Math.max(most - least, 0.02);
  const rows = swings.map((swing, index) => swingRow(context, swing, index, lead));
  const title = context.phrases('swings-axis', {
    leader: shortened(labelOf(context, sensitivity.leader), 32),
    against: shortened(labelOf(context, sensitivity.against), 32),
  });
  const values = {
    rows,
    notes: rows.flatMap((row) => endNotes(row, span * 0.14)),
    lines: isNear ? [{ lead: 0, label: context.phrases('swings-level') }] : [],
    domain: [least - span * 0.24, most + span * 0.24],
    title,
    title_lines: titleLines(title),
  };
  const alternative = swingsFinding(context);
  const aspectRatio = 0.1 + 0.035 * rows.length;
  return chartContent(context, { name: 'swings', values, alternative, aspectRatio });
}

/** Whether the line at which the order turns is worth its room: far from all bars it would squash them. */
function turnIsNear(leads: number[]): boolean {
  const [least, most] = [Math.min(...leads), Math.max(...leads)];
  const away = Math.max(0, least, -most);
  return away <= Math.max(most - least, 0.02) * 2.5;
}

/** Whether the turn of the order stands in the chart. */
export function showsTurn(context: ReportContext): boolean {
  const swings = shownSwings(context.assessment.certainty?.sensitivity?.swings ?? []);
  return turnIsNear([
    nominalLead(context),
    ...swings.flatMap(({ leadAtLow, leadAtHigh }) => [leadAtLow, leadAtHigh]),
  ]);
}

/** The inputs that move the lead most, with their ends. */
function swingsFinding(context: ReportContext): string {
  const swings = shownSwings(context.assessment.certainty?.sensitivity?.swings ?? []);
  if (swings.length === 0) return none;
  return swings
    .slice(0, 5)
    .map(({ label, owner, lowShown, highShown, leadAtLow, leadAtHigh }) =>
      context.phrases('swing-finding', {
        input: withOwner(context, label, owner),
        low: lowShown,
        high: highShown,
        lead_low: signedScore(leadAtLow),
        lead_high: signedScore(leadAtHigh),
      }),
    )
    .join(' ');
}

/** A name of an input with whom it belongs to: `stall torque (Servo as built)`. */
export function withOwner(context: ReportContext, label: string, owner: string | null): string {
  const of = ownerWords(context, owner, label);
  return of === '' ? label : `${label} (${of})`;
}

/** Lead in score of the one over the other at the nominal figures; who fails a limit has none. */
export function nominalLead(context: ReportContext): number {
  const sensitivity = context.assessment.certainty?.sensitivity;
  const scoreOf = (id: string | undefined) => {
    const candidate = context.candidates.find((one) => one.id === id);
    return candidate === undefined || candidate.passes === false ? 0 : candidate.score;
  };
  return scoreOf(sensitivity?.leader) - scoreOf(sensitivity?.against);
}

function shownSwings(swings: InputSwing[]): InputSwing[] {
  return swings
    .filter(({ leadAtLow, leadAtHigh }) => Number.isFinite(leadAtLow) && Number.isFinite(leadAtHigh))
    .slice(0, mostRows);
}

function swingRow(context: ReportContext, swing: InputSwing, index: number, lead: number) {
  const { label, owner, leadAtLow, leadAtHigh, lowShown, highShown } = swing;
  // Equal names would share a row.
  return {
    key: `${index}|${brokenLabel(withOwner(context, label, owner), 40)}`,
    lead,
    low: leadAtLow,
    high: leadAtHigh,
    lowShown,
    highShown,
  };
}

/** The two ends of an input, each written where it takes the lead to; both on one side stand in one note. */
function endNotes(
  { key, lead, low, high, lowShown, highShown }: ReturnType<typeof swingRow>,
  noteWidth: number,
) {
  // A note that the line at 0 would run through stands behind the line.
  const [least, most] = [Math.min(low, high, lead), Math.max(low, high, lead)];
  const left = { lead: least > 0 && least < noteWidth ? 0 : least, align: 'right', dx: -4 };
  const right = { lead: most < 0 && most > -noteWidth ? 0 : most, align: 'left', dx: 4 };
  const bothLeft = low <= lead && high <= lead;
  const bothRight = low >= lead && high >= lead;
  if (bothLeft || bothRight) {
    const first = Math.abs(low - lead) >= Math.abs(high - lead) ? lowShown : highShown;
    return [{ key, note: first, ...(bothLeft ? left : right) }];
  }
  const [lower, upper] = low < high ? [lowShown, highShown] : [highShown, lowShown];
  return [
    { key, note: lower, ...left },
    { key, note: upper, ...right },
  ];
}

function signedScore(score: number): string {
  return `${score > 0 ? '+' : ''}${fixed(score, 2)}`;
}
