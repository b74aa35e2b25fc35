import { type ThermalParameters, twoNode, twoNodeStep } from '../physics/thermal.js';
import type { HeatLoad } from './heat-load.js';
import type { HeatSeries } from './outcome.js';

/** Longest stretch of a show that is drawn, and how finely a long one is drawn. */
const longestSeriesS = 4 * 3600;
const pointCount = 240;

/** Winding temperatures at which the heat of a cue is worked out; linear between them. */
const gridK = [253.15, 313.15, 373.15, 673.15];

/** A cue as a stretch of constant heat that depends on the winding's temperature. */
interface CueHeat {
  durationS: number;
  /** Copper heat at `gridK`. */
  copperW: number[];
  gearW: number;
}

/** Winding and case from cold through the looped show, cue by cue, for charts. */
export function showHeatSeries(parameters: ThermalParameters, heat: HeatLoad, runtimeS: number): HeatSeries {
  const series: HeatSeries = { timesS: [], windingTemperaturesK: [], caseTemperaturesK: [] };
  const cues = cueHeats(heat);
  const node = twoNode(parameters);
  const rises = new Float64Array(2);
  const airK = parameters.airTemperatureK;
  const untilS = Math.min(longestSeriesS, Math.max(runtimeS, heat.totalS));
  const spacingS = untilS / pointCount;
  let timeS = 0;
  let nextS = 0;
  while (timeS < untilS) {
    for (const cue of cues) {
      if (timeS >= nextS) {
        series.timesS.push(timeS);
        series.windingTemperaturesK.push(airK + rises[0]!);
        series.caseTemperaturesK.push(airK + rises[1]!);
        nextS += spacingS;
      }
      twoNodeStep(node, rises, interpolate(cue.copperW, airK + rises[0]!), cue.gearW, cue.durationS);
      timeS += cue.durationS;
    }
    if (airK + rises[0]! > 1000) break;
  }
  return series;
}

function cueHeats(heat: HeatLoad): CueHeat[] {
  const { samples } = heat;
  const cues: CueHeat[] = [];
  let lastIndex = -1;
  for (let piece = 0; piece < heat.count; piece++) {
    const k = heat.sampleIndexes[piece]!;
    if (samples.cueIndexes[k] !== lastIndex) {
      lastIndex = samples.cueIndexes[k]!;
      cues.push({ durationS: 0, copperW: gridK.map(() => 0), gearW: 0 });
    }
    const cue = cues[cues.length - 1]!;
    const durationS = heat.durationsS[piece]!;
    cue.durationS += durationS;
    cue.gearW += heat.gearHeatsW[piece]! * durationS;
    gridK.forEach((windingK, i) => {
      cue.copperW[i]! += heat.copperW(piece, windingK) * durationS;
    });
  }
  return cues.map((cue) => ({
    durationS: cue.durationS,
    copperW: cue.copperW.map((energyJ) => energyJ / cue.durationS),
    gearW: cue.gearW / cue.durationS,
  }));
}

function interpolate(values: readonly number[], windingK: number): number {
  let upper = 1;
  while (upper < gridK.length - 1 && gridK[upper]! < windingK) upper++;
  const from = gridK[upper - 1]!;
  const share = (windingK - from) / (gridK[upper]! - from);
  return values[upper - 1]! + share * (values[upper]! - values[upper - 1]!);
}
