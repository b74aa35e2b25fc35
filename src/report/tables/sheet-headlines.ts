import type { SafetyFigures } from '../../assess/safety/safety-figures.js';
import type { ReportContext } from '../context.js';
import type { Values } from '../template/fill-template.js';
import { none, withReading } from '../words/figures.js';

/** The large figures of the safety sheet beside the fall, each with a line that says where and when. */
export function headlineValues(context: ReportContext, safety: SafetyFigures): Values {
  return {
    ...contactValues(context, safety),
    ...motionValues(context, safety),
    ...packValues(context, safety),
    ...heatValues(context, safety),
  };
}

/** `up to 137 N` where the draws made it cautious. */
function upTo({ phrases }: ReportContext, { isCautious }: SafetyFigures, figure: string): string {
  return isCautious && figure !== none ? phrases('sheet-up-to', { figure }) : figure;
}

function contactValues(context: ReportContext, safety: SafetyFigures): Values {
  const { phrases, units } = context;
  const { forceN, distanceM, tipForceN } = safety.crush;
  const near = { distance: withReading(distanceM, units.gap), tip: withReading(tipForceN, units.force) };
  return {
    crush: upTo(context, safety, withReading(forceN, units.force)),
    crush_note: distanceM === null ? phrases('sheet-crush') : phrases('sheet-crush-near', near),
  };
}

function motionValues(context: ReportContext, safety: SafetyFigures): Values {
  const { phrases, units } = context;
  const { showSpeedMPerS, showEnergyJ, freeSpeedMPerS } = safety.motion;
  const free = withReading(freeSpeedMPerS, units.speed);
  const energy = withReading(showEnergyJ, 'joulesInShort');
  const note = freeSpeedMPerS === null ? 'sheet-speed-note-show' : 'sheet-speed-note';
  return {
    what_moves: phrases(
      context.assessment.study.feature.kind === 'hinge' ? 'sheet-the-tip' : 'sheet-the-feature',
    ),
    show_speed: showSpeedMPerS === null ? phrases('sheet-unknown') : withReading(showSpeedMPerS, units.speed),
    show_speed_note:
      showSpeedMPerS === null
        ? phrases('sheet-no-speed-note', { free })
        : phrases(note, freeSpeedMPerS === null ? { energy } : { energy, free }),
    moving_mass:
      safety.movingMassKg === null
        ? phrases('sheet-unknown')
        : upTo(context, safety, withReading(safety.movingMassKg, units.largeMass)),
    moving_mass_note: phrases('sheet-mass-note'),
  };
}

function packValues({ phrases }: ReportContext, { pack }: SafetyFigures): Values {
  const energy = withReading(pack.energyJ, 'wattHours');
  const count = String(pack.carriedCount);
  const values = {
    chemistry: phrases(`chemistry-${pack.chemistry}`),
    sum: withReading(pack.carriedEnergyJ, 'wattHours'),
  };
  return {
    pack_energy: phrases('sheet-packs', { count, energy }),
    pack_note: phrases('sheet-pack-note', values),
  };
}

function heatValues(context: ReportContext, safety: SafetyFigures): Values {
  const { phrases, units } = context;
  const { caseTemperatureK, heldCaseTemperatureK, neverSettles, burnsOut, heldBurnsOut, windingLimitK } =
    safety.heat;
  if (caseTemperatureK === null) {
    return { case: phrases('sheet-unknown'), case_note: phrases('sheet-case-unknown-note') };
  }
  if (burnsOut) {
    const limit = withReading(windingLimitK, units.temperature);
    return {
      case: limit === none ? phrases('sheet-case-destroyed') : phrases('sheet-case-past', { limit }),
      case_note: phrases('sheet-case-note-destroyed'),
    };
  }
  // A nominal figure below a cautious one would say that holding for ever is cooler than the show.
  const tellsMore = heldCaseTemperatureK !== null && heldCaseTemperatureK > caseTemperatureK;
  const note = neverSettles
    ? phrases('sheet-case-note-runaway')
    : heldBurnsOut
      ? phrases('sheet-case-note-held-past')
      : tellsMore
        ? phrases('sheet-case-note', { held: withReading(heldCaseTemperatureK, units.temperature) })
        : phrases('sheet-case-note-show');
  return { case: upTo(context, safety, withReading(caseTemperatureK, units.temperature)), case_note: note };
}
