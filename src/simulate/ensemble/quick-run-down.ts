import { busVoltageV, openCircuitVoltageV, resistanceMultiplier } from '../../physics/cell.js';
import { longestRunS } from '../run-down.js';
import type { CueLoads } from './cue-loads.js';

/** The chosen pack in one draw, all cells together. */
export interface PackDraw {
  seriesCount: number;
  openCircuitVoltagesV: readonly number[];
  /** Usable charge at temperature and age. */
  chargeC: number;
  /** R_0 and R_1 at temperature, before their rise at low charge; all cells, as the pack's current sees them. */
  immediateOhm: number;
  relaxingOhm: number;
  relaxationTimeS: number;
  leadOhm: number;
  /** Cut-off or controller, whichever is higher; and with a candidate's regulator. */
  packLowestBusV: number;
  lowestBusV: number;
  floorBusV: number;
  warningBusV: number;
  reserveFraction: number;
}

/** States of charge between which the mean current is taken straight; closer where the voltage falls away. */
const knots = [0.95, 0.75, 0.5, 0.3, 0.2, 0.12, 0.07, 0.045, 0.02, 0.008, 0];

/** Halvings of the search for the end, and of the crossing inside a cue. */
const endHalvings = 12;
const crossingHalvings = 10;

/** Whole loops played cue by cue before the predicted end. */
const replayLoops = 2;

/**
 * Runtime on one pack from cue means, draw after draw: the mean current over the state of charge, the last loops
 * played cue by cue with the crossing root-found. (M18, `averaged`, on cues instead of samples)
 */
export class QuickRunDown {
  runtimeS = 0;
  /** NaN when the run ends before it. */
  warningS = 0;
  private readonly leadInDecays: Float64Array;
  private readonly decays: Float64Array;
  private readonly currentsA: Float64Array;
  private pack!: PackDraw;
  private loads!: CueLoads;
  private startV = 0;
  /** Where the cue-by-cue play stands, and when it first met the warning; NaN when it has not. */
  private soc = 1;
  private relaxV = 0;
  private timeS = 0;
  private warnedS = Number.NaN;

  constructor(
    leadInCount: number,
    private readonly cueCount: number,
  ) {
    this.leadInDecays = new Float64Array(leadInCount);
    this.decays = new Float64Array(cueCount);
    this.currentsA = new Float64Array(cueCount);
  }

  /** Run one draw down. */
  run(pack: PackDraw, leadIn: CueLoads, loads: CueLoads): void {
    this.pack = pack;
    this.loads = loads;
    fillDecays(this.leadInDecays, leadIn, pack.relaxationTimeS);
    fillDecays(this.decays, loads, pack.relaxationTimeS);
    this.begin(1, 0, 0);
    const ends = this.playOnce(leadIn, this.leadInDecays);
    this.warningS = this.warnedS;
    if (!ends) this.runLoops();
    if (!(this.warningS <= this.runtimeS)) this.warningS = Number.NaN;
  }

  /** The loops that follow the lead-in. */
  private runLoops(): void {
    const { pack } = this;
    const { soc: startSoc, relaxV: startV, timeS: startS } = this;
    const firstA = this.meanCurrentA(startSoc, startV);
    let currentA = this.meanCurrentA(startSoc, firstA * this.relaxOhm(startSoc));
    // A rested pack draws less until its relaxation voltage is there.
    const saved = ((currentA - firstA) * pack.relaxationTimeS) / pack.chargeC;
    let soc = startSoc + saved;
    let timeS = startS;
    const warnsAt = (atS: number): void => {
      if (Number.isNaN(this.warningS)) this.warningS = atS;
    };
    this.look(soc);
    if (!(this.lowestV > pack.warningBusV)) warnsAt(timeS);
    if (!this.goesOn()) {
      this.playToEnd();
      return;
    }
    for (let j = 0; j < knots.length; j++) {
      const nextSoc = Math.max(knots[j]!, pack.reserveFraction);
      if (nextSoc >= soc) continue;
      const nextA = this.meanCurrentA(nextSoc, currentA * this.relaxOhm(nextSoc));
      const timeTo = (at: number): number => {
        const share = (soc - at) / (soc - nextSoc);
        const atA = currentA + share * (nextA - currentA);
        return ((soc - at) * pack.chargeC * (1 / currentA + 1 / atA)) / 2;
      };
      this.look(nextSoc);
      if (Number.isNaN(this.warningS) && !(this.lowestV > pack.warningBusV)) {
        warnsAt(timeS + timeTo(this.rootBetween(soc, nextSoc, pack.warningBusV, Number.NEGATIVE_INFINITY)));
      }
      const ends = !this.goesOn();
      if (ends || nextSoc <= pack.reserveFraction || j === knots.length - 1) {
        const endSoc = ends ? this.rootBetween(soc, nextSoc, pack.lowestBusV, pack.floorBusV) : nextSoc;
        const endS = timeS + timeTo(endSoc);
        const endA = currentA + ((soc - endSoc) / (soc - nextSoc)) * (nextA - currentA);
        this.finish(endS, endSoc, endA);
        return;
      }
      timeS += timeTo(nextSoc);
      soc = nextSoc;
      currentA = nextA;
    }
  }

  /** Go back whole loops from the predicted end and play them; a short run is played from where it stands. */
  private finish(endS: number, endSoc: number, endA: number): void {
    if (!(endS < longestRunS)) {
      this.runtimeS = longestRunS;
      return;
    }
    const { totalS } = this.loads;
    const loops = Math.floor((endS - this.timeS) / totalS) - replayLoops;
    if (loops > 0) {
      const fromS = this.timeS + loops * totalS;
      // Charge at that time: backwards from the end at the mean current there.
      const fromSoc = endSoc + ((endS - fromS) * endA) / this.pack.chargeC;
      this.periodic(fromSoc);
      this.begin(fromSoc, this.startV, fromS);
    }
    this.playToEnd();
  }

  private begin(soc: number, relaxV: number, timeS: number): void {
    this.soc = soc;
    this.relaxV = relaxV;
    this.timeS = timeS;
    this.warnedS = Number.NaN;
  }

  private playToEnd(): void {
    while (this.timeS < longestRunS) if (this.playOnce(this.loads, this.decays)) return;
    this.runtimeS = longestRunS;
  }

  /** Play a list cue by cue from where it stands; true when the run ends in it. */
  private playOnce(loads: CueLoads, decays: Float64Array): boolean {
    const { pack } = this;
    for (let c = 0; c < loads.count; c++) {
      const { soc, relaxV, timeS } = this;
      const durationS = loads.durationsS[c]!;
      const powerW = loads.powersW[c]!;
      const constantA = loads.currentsA[c]!;
      const busV = this.busV(soc, relaxV, powerW, constantA);
      const currentA = powerW / busV + constantA;
      if (!(busV > pack.warningBusV)) this.warns(timeS);
      if (!(this.marginAt(soc, busV, currentA) > 0)) return this.ends(timeS);
      const nextSoc = soc - (currentA * durationS) / pack.chargeC;
      const settledV = currentA * this.relaxOhm((soc + nextSoc) / 2);
      const nextV = settledV + (relaxV - settledV) * decays[c]!;
      const peakW = loads.peakPowersW[c]!;
      const peakA = loads.peakCurrentsA[c]!;
      if (peakW !== powerW || peakA !== constantA) {
        const middleSoc = (soc + nextSoc) / 2;
        const peakV = this.busV(middleSoc, (relaxV + nextV) / 2, peakW, peakA);
        if (!(peakV > pack.warningBusV)) this.warns(timeS + durationS / 2);
        if (!(this.marginAt(middleSoc, peakV, peakW / peakV + peakA) > 0)) {
          return this.ends(timeS + durationS / 2);
        }
      }
      if (!(this.margin(nextSoc, nextV, powerW, constantA) > 0)) {
        return this.ends(timeS + this.crossing(loads, c, nextSoc, settledV));
      }
      this.soc = nextSoc;
      this.relaxV = nextV;
      this.timeS = timeS + durationS;
    }
    return false;
  }

  private warns(timeS: number): void {
    if (Number.isNaN(this.warnedS)) this.warnedS = timeS;
  }

  private ends(timeS: number): true {
    this.runtimeS = timeS;
    return true;
  }

  /** When, inside a cue, the margin is used up. */
  private crossing(loads: CueLoads, c: number, nextSoc: number, settledV: number): number {
    const { pack, soc, relaxV } = this;
    const durationS = loads.durationsS[c]!;
    let before = 0;
    let after = durationS;
    for (let halving = 0; halving < crossingHalvings; halving++) {
      const middle = (before + after) / 2;
      const at = soc + (nextSoc - soc) * (middle / durationS);
      const voltageV = settledV + (relaxV - settledV) * Math.exp(-middle / pack.relaxationTimeS);
      if (this.margin(at, voltageV, loads.powersW[c]!, loads.currentsA[c]!) > 0) before = middle;
      else after = middle;
    }
    return after;
  }

  private relaxOhm(soc: number): number {
    return this.pack.relaxingOhm * resistanceMultiplier(soc);
  }

  private emfV(soc: number): number {
    return this.pack.seriesCount * openCircuitVoltageV(this.pack.openCircuitVoltagesV, soc);
  }

  private ohm(soc: number): number {
    return this.pack.immediateOhm * resistanceMultiplier(soc) + this.pack.leadOhm;
  }

  private busV(soc: number, relaxV: number, powerW: number, currentA: number): number {
    return busVoltageV(this.emfV(soc) - relaxV, this.ohm(soc), powerW, currentA);
  }

  private margin(soc: number, relaxV: number, powerW: number, currentA: number): number {
    const busV = this.busV(soc, relaxV, powerW, currentA);
    return this.marginAt(soc, busV, powerW / busV + currentA);
  }

  /** What is left at a known voltage and current; NaN when the pack has collapsed. */
  private marginAt(soc: number, busV: number, packA: number): number {
    const { pack } = this;
    if (soc <= pack.reserveFraction) return 0;
    return Math.min(busV - pack.lowestBusV, busV + packA * pack.leadOhm - pack.floorBusV);
  }

  /** Mean pack current of the loop at a state of charge, with one relaxation voltage throughout. */
  private meanCurrentA(soc: number, relaxV: number): number {
    const { loads, currentsA } = this;
    const emfV = this.emfV(soc) - relaxV;
    const ohm = this.ohm(soc);
    let chargeC = 0;
    for (let c = 0; c < this.cueCount; c++) {
      const powerW = loads.powersW[c]!;
      const busV = busVoltageV(emfV, ohm, powerW, loads.currentsA[c]!);
      const currentA = (Number.isNaN(busV) ? 0 : powerW / busV) + loads.currentsA[c]!;
      currentsA[c] = currentA;
      chargeC += currentA * loads.durationsS[c]!;
    }
    return chargeC / loads.totalS;
  }

  /** Relaxation voltage at the start of the loop once it repeats, from the currents of the last mean. */
  private periodic(soc: number): void {
    const relaxOhm = this.relaxOhm(soc);
    let endV = 0;
    let product = 1;
    for (let c = 0; c < this.cueCount; c++) {
      const settledV = this.currentsA[c]! * relaxOhm;
      endV = settledV + (endV - settledV) * this.decays[c]!;
      product *= this.decays[c]!;
    }
    this.startV = endV / (1 - product);
  }

  /** Lowest bus and cell-terminal voltage of the last look, and the peak that pulls the bus lowest. */
  private lowestV = 0;
  private lowestTerminalV = 0;
  private hardestCue = 0;
  private hardestRelaxV = 0;

  /** Look at the loop at a state of charge, peaks included, with the currents of the last mean. */
  private look(soc: number): void {
    const { loads, pack } = this;
    this.periodic(soc);
    const relaxOhm = this.relaxOhm(soc);
    const emfV = this.emfV(soc);
    const ohm = this.ohm(soc);
    let relaxV = this.startV;
    this.lowestV = Number.POSITIVE_INFINITY;
    this.lowestTerminalV = Number.POSITIVE_INFINITY;
    for (let c = 0; c < this.cueCount; c++) {
      const settledV = this.currentsA[c]! * relaxOhm;
      const nextV = settledV + (relaxV - settledV) * this.decays[c]!;
      const powerW = loads.peakPowersW[c]!;
      const currentA = loads.peakCurrentsA[c]!;
      const worseV = Math.max(relaxV, nextV);
      const busV = busVoltageV(emfV - worseV, ohm, powerW, currentA);
      relaxV = nextV;
      if (busV >= this.lowestV) continue;
      this.hardestCue = c;
      this.hardestRelaxV = worseV;
      this.lowestV = Number.isNaN(busV) ? Number.NEGATIVE_INFINITY : busV;
      this.lowestTerminalV = this.lowestV + (powerW / busV + currentA) * pack.leadOhm;
      if (Number.isNaN(busV)) return;
    }
  }

  private goesOn(): boolean {
    return this.lowestV > this.pack.lowestBusV && this.lowestTerminalV > this.pack.floorBusV;
  }

  /** State of charge at which the hardest peak of the last look uses up its margin. */
  private rootBetween(fuller: number, emptier: number, lowestBusV: number, floorBusV: number): number {
    const { loads, pack, hardestCue } = this;
    const powerW = loads.peakPowersW[hardestCue]!;
    const currentA = loads.peakCurrentsA[hardestCue]!;
    const relaxPerOhm = this.hardestRelaxV / this.relaxOhm(emptier);
    let good = fuller;
    let bad = emptier;
    for (let halving = 0; halving < endHalvings; halving++) {
      const middle = (good + bad) / 2;
      const busV = this.busV(middle, relaxPerOhm * this.relaxOhm(middle), powerW, currentA);
      const terminalV = busV + (powerW / busV + currentA) * pack.leadOhm;
      if (busV > lowestBusV && terminalV > floorBusV) good = middle;
      else bad = middle;
    }
    return good;
  }
}

/** How much of a relaxation voltage is left at the end of each cue. */
function fillDecays(decays: Float64Array, loads: CueLoads, relaxationTimeS: number): void {
  for (let c = 0; c < loads.count; c++) decays[c] = Math.exp(-loads.durationsS[c]! / relaxationTimeS);
}
