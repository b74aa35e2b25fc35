import type { Finding } from '../drives/finding.js';
import { copperReferenceK } from '../physics/constants.js';
import { copperResistanceRatio } from '../physics/dc-motor.js';
import { formatValue } from '../quantity/format.js';
import type { Study } from '../study/study.js';
import type { CandidateModel } from './candidate-model.js';
import { CuePlayer, type Fineness, fine, type PlayedCues } from './play-loop.js';

/** A move that takes this much longer when warm is seen from outside and worth telling (from experience). */
const slowerRatio = 1.1;

/** Fewer halvings: the repeat only tells whether it is slower by a noticeable share. */
const warmFineness: Fineness = { ...fine, stretchHalvings: 12 };

/** The candidate with its copper at a temperature: resistance up, everything else the same. */
function warmModel(model: CandidateModel, windingK: number): CandidateModel {
  const resistanceOhm = model.drive.resistanceOhm * copperResistanceRatio(windingK);
  return { ...model, drive: { ...model.drive, resistanceOhm } };
}

/**
 * Repeat moves and holds with the winding as warm as the show makes it. (M13)
 * @param cold the loop as played with the resistance as listed
 */
export function warmFindings(
  study: Study,
  model: CandidateModel,
  cold: PlayedCues,
  windingK: number | null,
): Finding[] {
  // Up to 20 °C copper resists no more than listed, so nothing gets slower.
  if (windingK === null || windingK <= copperReferenceK) return [];
  const warm = warmModel(model, windingK);
  const hot = new CuePlayer(warm, study.show.loop, [], warmFineness).play();
  const at = `With its winding at ${formatValue(windingK, '°C', 2)}`;
  const findings: Finding[] = [];
  const ratios = hot.stretches.map(
    (stretch, i) => (stretch ?? Number.POSITIVE_INFINITY) / (cold.stretches[i] ?? 1),
  );
  const slowest = Math.max(1, ...ratios);
  if (slowest > slowerRatio && cold.stuckAt === null) {
    const how =
      hot.stuckAt === null
        ? `a move takes ${((slowest - 1) * 100).toFixed(0)} % longer than cold`
        : 'a move can no longer be made';
    findings.push({ code: 'slower-when-warm', severity: 'note', field: null, message: `${at} ${how}.` });
  }
  if (hot.failedHolds.length > 0 && cold.failedHolds.length === 0) {
    const hold = hot.failedHolds[0]!;
    findings.push({
      code: 'cannot-hold-when-warm',
      severity: 'odd',
      field: null,
      message:
        `${at} the hold of cue ${hold.cue.name} needs ${formatValue(hold.voltageV, 'V')}, ` +
        `more than the ${formatValue(hold.limitV, 'V')} the weakest bus leaves.`,
    });
  }
  return findings;
}
