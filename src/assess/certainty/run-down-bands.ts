import { type Ensemble, outcomeIndex } from '../../simulate/ensemble/ensemble.js';
import type { CandidateRun, RunDownSeries } from '../../simulate/outcome.js';
import type { RunDownBand } from '../certainty.js';

/** Points of a band on its time axis. */
const pointCount = 61;

/** A line takes two. */
const fewestPoints = 2;

/** Shares of the draws that end before the three runs. */
const shownShares = [0.1, 0.5, 0.9] as const;

/**
 * The run on one pack in three draws: those whose runtimes stand at the 10, 50 and 90 % point.
 * @param runOf the whole simulation of a candidate with the numbers of one draw
 * @returns null when it never runs, and when a run is so long that the simulation keeps no voltages of it
 */
export function runDownBand(
  candidate: string,
  { candidateIds, outcomes }: Ensemble,
  runOf: (draw: number) => CandidateRun,
): RunDownBand | null {
  const runtimes = outcomes[candidateIds.indexOf(candidate)]![outcomeIndex.runtimeS]!;
  const order = [...runtimes.keys()]
    .filter((draw) => runtimes[draw]! > 0)
    .sort((a, b) => runtimes[a]! - runtimes[b]! || a - b);
  if (order.length === 0) return null;
  const [low, middle, high] = shownShares.map(
    (share) => runOf(order[Math.round(share * (order.length - 1))]!).series.runDown,
  ) as [RunDownSeries, RunDownSeries, RunDownSeries];
  if ([low, middle, high].some(({ timesS }) => timesS.length < fewestPoints)) return null;
  const lastS = Math.max(...[low, middle, high].map(endOf));
  const timesS = Array.from({ length: pointCount }, (_, point) => (lastS * point) / (pointCount - 1));
  return {
    candidate,
    timesS,
    lowVoltagesV: voltagesAt(low, timesS),
    middleVoltagesV: voltagesAt(middle, timesS),
    highVoltagesV: voltagesAt(high, timesS),
    endTimesS: [endOf(low), endOf(middle), endOf(high)],
  };
}

const endOf = ({ timesS }: RunDownSeries): number => timesS.at(-1) ?? 0;

/** Lowest voltages of a run at given times; the last one after its end. */
function voltagesAt({ timesS, lowestVoltagesV }: RunDownSeries, at: readonly number[]): number[] {
  let index = 0;
  return at.map((timeS) => {
    while (index < timesS.length - 2 && timesS[index + 1]! < timeS) index++;
    const [fromS, toS] = [timesS[index]!, timesS[index + 1] ?? timesS[index]!];
    const [fromV, toV] = [lowestVoltagesV[index]!, lowestVoltagesV[index + 1] ?? lowestVoltagesV[index]!];
    if (timeS >= toS || toS <= fromS) return toV;
    return fromV + ((toV - fromV) * (timeS - fromS)) / (toS - fromS);
  });
}
