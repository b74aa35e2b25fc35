import type { Caution } from '../assessment.js';
import type { Judged } from '../criterion-values.js';
import { amperes, milliseconds, volts } from '../figures.js';
import { fuseContinuousA, packContinuousA, surgeS, wireContinuousA } from '../protection.js';
import { about, type CautionWords, general } from './caution.js';
import { drawnSeverity, inSoMany, shareOfDraws } from './drawn-share.js';

/** A fuse bears this multiple of its rating for the length of a start-up surge (from memory of blade-fuse curves). */
const fuseSurgeRatio = 3.5;

/** Cautions about currents and voltages between the pack and one candidate. */
export function supplyCautions(judged: Judged): Caution[] {
  return [...overload(judged), ...startUp(judged), ...lastVolts(judged), ...highVoltage(judged)];
}

/** Cautions about what is missing between pack and drives, whatever the candidate. */
export function wiringCautions({ study: { wiring, carrier } }: Judged): Caution[] {
  const cautions: Caution[] = [];
  if (wiring.protectionTripA === null) cautions.push(general('no-protection', 'severe', noProtection));
  if (wiring.fuseRatingA === null) cautions.push(general('no-fuse', 'caution', noFuse(carrier.worn)));
  return cautions;
}

const noProtection: CautionWords = {
  figure: 'no protection board named',
  text: 'No protection board is named: nothing stops a shorted or emptied pack.',
  action: 'Fit one by the advice on protection; enter protection.trip and protection.delay.',
};

const noFuse = (worn: boolean): CautionWords => ({
  figure: 'no fuse named',
  text: `No fuse is named: a pinched wire becomes the fuse${worn ? ', on the body' : ''}.`,
  action: 'Fit a fuse close to the pack and enter fuse.rating.',
});

function overload(judged: Judged): Caution[] {
  const { tenSecondCurrentA, meanCurrentA, peakCurrentA } = judged.run.demand;
  if (tenSecondCurrentA === null || meanCurrentA === null || peakCurrentA === null) return [];
  const { wiring, pack } = judged.study;
  const cautions: Caution[] = [];
  const packA = packContinuousA(pack);
  if (packA !== null && peakCurrentA > packA) {
    const words = {
      figure: amperes(peakCurrentA),
      text: `The show takes up to ${amperes(peakCurrentA)} from the pack; its label, believed up to 25C, allows ${amperes(packA)}.`,
      action: 'Take a pack of more capacity, or two equal ones in parallel with a fuse each.',
    };
    cautions.push(about(judged, 'pack-current', tenSecondCurrentA > packA ? 'severe' : 'caution', words));
  }
  const fuseA = fuseContinuousA(wiring);
  if (fuseA !== null && tenSecondCurrentA > fuseA) {
    const words = {
      figure: amperes(tenSecondCurrentA),
      text: `Ten seconds of the show take ${amperes(tenSecondCurrentA)}; the fuse carries ${amperes(fuseA)}, 75 % of its rating, for long.`,
      action: 'Fit the next larger fuse that the wire still allows.',
    };
    cautions.push(about(judged, 'fuse', 'caution', words));
  }
  const wireA = wireContinuousA(wiring);
  if (wireA !== null && meanCurrentA > wireA) {
    const words = {
      figure: amperes(meanCurrentA),
      text: `The show takes ${amperes(meanCurrentA)} on average; the wire carries about ${amperes(wireA)} under fabric.`,
      action: 'Take thicker wire, and check the connectors too.',
    };
    cautions.push(about(judged, 'wire', 'severe', words));
  }
  return cautions;
}

function startUp(judged: Judged): Caution[] {
  const { startUpCurrentA, peakCurrentA } = judged.run.demand;
  const { protectionTripA, protectionDelayS, fuseRatingA } = judged.study.wiring;
  const lengthS = surgeS(judged.candidate);
  const cautions: Caution[] = [];
  if (protectionTripA !== null && peakCurrentA !== null) {
    const trips = peakCurrentA > protectionTripA;
    const share = shareOfDraws(judged, 'peakPackCurrentA', (drawnA) => drawnA > protectionTripA);
    const severity = drawnSeverity(trips, share);
    const words = {
      figure: trips ? amperes(peakCurrentA) : inSoMany(share),
      text: `${trips ? `The show takes up to ${amperes(peakCurrentA)};` : `The show takes more than ${amperes(protectionTripA)} ${inSoMany(share)}:`} the protection board trips at ${amperes(protectionTripA)} and the feature goes dead.`,
      action: 'Fit a board by the advice on protection, or slow the moves.',
    };
    if (severity !== null) cautions.push(about(judged, 'protection-trips', severity, words));
  }
  if (startUpCurrentA === null) return cautions;
  const outlasts = protectionDelayS === null || lengthS >= protectionDelayS;
  if (protectionTripA !== null && startUpCurrentA > protectionTripA && outlasts) {
    const words = {
      figure: amperes(startUpCurrentA),
      text: `At start-up the motors take ${amperes(startUpCurrentA)} for ${milliseconds(lengthS)}; the protection board trips at ${amperes(protectionTripA)}${protectionDelayS === null ? ', its delay is not known' : ` after ${milliseconds(protectionDelayS)}`}.`,
      action: 'Fit a board with a longer delay, or let the drives start one after the other.',
    };
    cautions.push(about(judged, 'start-up-trips', 'severe', words));
  }
  if (fuseRatingA !== null && startUpCurrentA > fuseSurgeRatio * fuseRatingA) {
    const words = {
      figure: amperes(startUpCurrentA),
      text: `At start-up the motors take ${amperes(startUpCurrentA)}, over ${fuseSurgeRatio} times the fuse rating of ${amperes(fuseRatingA)}.`,
      action: 'Let the drives start one after the other, or fit a slow fuse.',
    };
    cautions.push(about(judged, 'start-up-fuse', 'caution', words));
  }
  return cautions;
}

/** The run ends before the pack is empty, and all at once. */
function lastVolts(judged: Judged): Caution[] {
  const { endReason, warningS } = judged.run.nominal;
  if (endReason !== 'collapse' && endReason !== 'controller' && endReason !== 'regulator') return [];
  const ends = {
    collapse: 'The supply collapses: the loads ask for more power than pack and wire can give',
    controller: 'The controller resets at its minimum voltage before the pack is empty',
    regulator: 'The regulator drops out before the pack is empty',
  };
  const words = {
    figure: endReason,
    text: `${ends[endReason]}${warningS === null ? ', and no low-voltage warning comes before it' : ''}.`,
    action: 'Shorten or thicken the wire, take a pack with less resistance, or set the warning higher.',
  };
  return [about(judged, 'sudden-end', warningS === null ? 'severe' : 'caution', words)];
}

function highVoltage(judged: Judged): Caution[] {
  const { busVoltageV, maximumVoltageV } = judged.run.nominal;
  if (busVoltageV <= maximumVoltageV) return [];
  const words = {
    figure: volts(busVoltageV),
    text: `A full pack gives ${volts(busVoltageV)}; the drive bears ${volts(maximumVoltageV)}.`,
    action: 'Take a pack with fewer cells, or supply the drive through a regulator.',
  };
  return [about(judged, 'voltage', 'severe', words)];
}
