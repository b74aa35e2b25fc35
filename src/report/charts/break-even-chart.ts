import type { ReportContext } from '../context.js';
import type { ChartContent } from '../template/fill-template.js';
import { counted, fixed, money } from '../words/figures.js';
import { chartContent } from './chart-content.js';

/** Sums below read as nothing with two digits. */
const leastShown = 0.005;

/** Balance of the change over the events, and when it has paid for itself; null where that cannot be told. */
export function breakEvenChart(context: ReportContext): ChartContent | null {
  const { breakEven } = context.assessment;
  if (breakEven === null || breakEven.series.eventCounts.length < 2) return null;
  // A change that saves nothing draws a flat line; its sentence says so.
  if (!(Math.abs(breakEven.valuePerEventMoney) >= leastShown)) return null;
  const { series, eventCount } = breakEven;
  const { eventsPerYearCount } = context.assessment.study;
  const rows = series.eventCounts.map((events, index) => ({ events, balance: series.balancesMoney[index]! }));
  const last = rows.at(-1)!;
  const ends = [0, ...rows.map(({ balance }) => balance)];
  const [least, most] = [Math.min(...ends), Math.max(...ends)];
  const span = Math.max(most - least, 1);
  const isShown = eventCount !== null && eventCount <= last.events;
  const years =
    eventsPerYearCount > 0 && last.events / eventsPerYearCount <= 40
      ? Array.from({ length: Math.floor(last.events / eventsPerYearCount) }, (_, index) => ({
          events: (index + 1) * eventsPerYearCount,
          label: context.phrases('break-even-year', { year: String(index + 1) }),
        }))
      : [];
  const step = Math.max(1, Math.ceil(years.length / 6));
  const values = {
    rows,
    years: years.filter((_, index) => (index + 1) % step === 0),
    crossing: isShown
      ? [
          {
            events: eventCount,
            balance: 0,
            label: context.phrases('break-even-at', { events: counted(eventCount, 'event') }),
          },
        ]
      : [],
    end: [{ ...last, label: money(last.balance, context.currency) }],
    domain: [least - span * 0.08, most + span * 0.14],
    x_end: last.events * 1.1,
    title: `balance, ${context.currency || 'money'}`,
  };
  const alternative = breakEven.sentence;
  return chartContent(context, { name: 'break-even', values, alternative, aspectRatio: 0.22 });
}

/** The parts of what an event saves, as words. */
export function valueParts(context: ReportContext): string {
  const parts = context.assessment.breakEven?.parts ?? [];
  return parts
    .filter(({ valueMoney }) => Math.abs(valueMoney) >= leastShown)
    .map(({ label, valueMoney }) => `${label} ${fixed(valueMoney, 2)}\u00a0${context.currency}`.trim())
    .join(', ');
}
