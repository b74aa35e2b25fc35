import { filledFigures } from '../drives/drive-parameters.js';
import type { AssumedValue } from '../drives/finding.js';
import { formatValue } from '../quantity/format.js';
import type { Candidate, Study } from '../study/study.js';
import type { PreparedCandidate } from './candidate-model.js';
import { cellResistanceOhm } from './pack-model.js';
import { surfaceM2, thermalMassKg, thermalOf } from './thermal-model.js';

/** Values that physics filled in for one candidate because its sheet left them blank. */
export function assumedOf(study: Study, candidate: Candidate, prepared: PreparedCandidate): AssumedValue[] {
  return [
    ...motorValues(candidate, prepared),
    ...heatValues(study, candidate),
    ...strutValues(prepared),
    ...packValues(study),
  ];
}

/** One assumed value shown in a unit of its own. */
function assumed(field: string, value: number, unit: string, shownIn: string, basis: string): AssumedValue {
  return { field, value, unit, shown: formatValue(value, shownIn), basis };
}

function motorValues({ sheet, typical }: Candidate, { model }: PreparedCandidate): AssumedValue[] {
  const { drive } = model;
  const filled = filledFigures(sheet, model.bus.nominalV);
  const values: AssumedValue[] = [];
  const share = Math.round(typical.noLoadCurrentRatio * 100);
  if (filled.stallCurrentA) {
    const stated = sheet.gearEfficiency;
    const efficiency = Math.round((stated ?? typical.forwardEfficiency) * 100);
    const word = stated === null ? 'a usual' : 'the stated';
    const basis = `stall effort and no-load speed at ${word} gear efficiency of ${efficiency} %`;
    values.push(assumed('stall_current', drive.stallCurrentA, 'A', 'A', basis));
  }
  if (filled.noLoadCurrentA) {
    const basis = `usual ${share} % of the stall current`;
    values.push(assumed('no_load_current', drive.noLoadCurrentA, 'A', 'A', basis));
  }
  return values;
}

function heatValues(study: Study, { sheet }: Candidate): AssumedValue[] {
  const thermal = thermalOf(sheet, study.air);
  const values: AssumedValue[] = [];
  const massText = formatValue(thermalMassKg(sheet), 'g');
  const area = formatValue(surfaceM2(sheet), 'cm²', 3, 'area');
  if (sheet.caseToAirKPerW === null) {
    const cover = study.air.buried ? ' under 20 mm of foam' : ', 10 W/m²K';
    const basis = `surface of ${area}${cover} (from experience)`;
    values.push(assumed('case_to_air', thermal.caseToAirKPerW, 'K/W', 'K/W', basis));
  }
  if (sheet.windingHeatCapacityJPerK === null) {
    const basis = `a tenth of ${massText} as copper (from experience)`;
    values.push(assumed('winding_heat_capacity', thermal.windingHeatCapacityJPerK, 'J/K', 'J/K', basis));
  }
  if (sheet.caseHeatCapacityJPerK === null) {
    const basis = `nine tenths of ${massText} as case and gears (from experience)`;
    values.push(assumed('case_heat_capacity', thermal.caseHeatCapacityJPerK, 'J/K', 'J/K', basis));
  }
  return values;
}

/** Why pivots stand as they do that no sheet gave. */
const pivotBasis = {
  fits: 'proposed: fits stroke and closed length with the least peak force',
  'by-stroke': 'proposed by the stroke alone: without closed_length nobody knows whether the drive goes in',
  fallback: 'no pivots fit: a third of the feature, square at level, to show where it fails',
} as const;

function strutValues({ model, proposedPivots }: PreparedCandidate): AssumedValue[] {
  if (proposedPivots === false) return [];
  const basis = pivotBasis[proposedPivots];
  const { coupling } = model;
  return [
    assumed('strut_frame_arm', coupling.frameArmM, 'm', 'mm', basis),
    assumed('strut_feature_arm', coupling.featureArmM, 'm', 'mm', basis),
    assumed('strut_level_angle', coupling.levelAngleRad, 'rad', 'deg', basis),
    {
      field: 'strut_side',
      value: coupling.sideSign === 1 ? 'push' : 'pull',
      unit: '',
      shown: coupling.sideSign === 1 ? 'push' : 'pull',
      basis,
    },
  ];
}

/** The pack's own gap is the same for all candidates; it is listed with each because each rests on it. */
function packValues({ pack }: Study): AssumedValue[] {
  if (pack.cellResistanceOhm !== null) return [];
  const basis =
    pack.chemistry.id === 'lipo' && pack.dischargeRatingPerH !== null
      ? 'by its discharge label (from experience)'
      : `usual for ${pack.chemistry.id} of this capacity`;
  return [assumed('cell_resistance', cellResistanceOhm(pack), 'Ω', 'mΩ', basis)];
}
