import { standardGravityMPerS2 } from '../../physics/constants.js';
import { speedRatio, strutAngleRad, strutLengthM } from '../../physics/linkage.js';
import { gravityEffortAt, springEffort, staticEffort } from '../../physics/load.js';
import { formatValue } from '../../quantity/format.js';
import { holdEffortAt } from '../../simulate/hold.js';
import type { CalculationLine } from '../assessment.js';
import { decimal, effortOf, plain, positionOf } from '../figures.js';
import { from, type LineWriter, type Worked } from './line.js';

const gravityText = `${standardGravityMPerS2} m/s²`;

const mechanicsBook = (equation: string) => from(equation, 'meriam-kraige-dynamics');

/** What the feature asks at a pose, and what that is at the drive. (M1–M4) */
export function holdLoadWorking(worked: Worked, position: number, line: LineWriter): CalculationLine[] {
  const { model } = worked.prepared;
  const { load, coupling, drive } = model;
  const motion = load.isHinge ? 'rotary' : 'linear';
  const gravity = gravityEffortAt(load, position);
  const effort = staticEffort(load, position);
  const driveEffort = holdEffortAt(model, position);
  const lines = [gravityLine(worked, position, gravity, line)];
  const ratio = speedRatio(coupling, position);
  if (load.spring.form !== 'none') {
    const numbers = `${effortOf(gravity, motion)} − ${effortOf(springEffort(load.spring, position), motion)}`;
    lines.push(
      line(
        'Less the assist spring',
        'y = y_gravity − y_spring',
        numbers,
        effortOf(effort, motion),
        mechanicsBook('M1'),
      ),
    );
  }
  if (coupling.kind === 'strut') lines.push(armLine(worked, position, ratio, line));
  const numbers = `${effortOf(effort, motion)} / (${coupling.driveCount} · ${ratioText(worked, ratio)})`;
  lines.push(
    line(
      'Effort of one drive',
      'T = y / (n·u)',
      numbers,
      effortOf(driveEffort, drive.motion),
      mechanicsBook('M3'),
    ),
  );
  return lines;
}

function gravityLine(
  { study, prepared }: Worked,
  position: number,
  gravity: number,
  line: LineWriter,
): CalculationLine {
  const { load } = prepared.model;
  if (!load.isHinge) {
    const numbers = `${plain(load.inertia)} kg · ${gravityText} · sin ${formatValue(study.feature.inclineRad, 'deg')}`;
    return line(
      'Effort of the feature',
      'y = m·g·sin(incline)',
      numbers,
      formatValue(gravity, 'N'),
      mechanicsBook('M2'),
    );
  }
  const momentKgM = load.gravityEffort / standardGravityMPerS2;
  const angle = `cos(${positionOf(position, true)} + ${positionOf(load.leanRad, true)})`;
  return line(
    'Effort of the feature',
    'y = m·r·g·cos(θ + δ), with m·r corrected for tilt',
    `${plain(momentKgM)} kg·m · ${gravityText} · ${angle}`,
    formatValue(gravity, 'N·m'),
    mechanicsBook('M1'),
  );
}

function armLine({ prepared }: Worked, position: number, ratio: number, line: LineWriter): CalculationLine {
  const { coupling } = prepared.model;
  const millimetres = (valueM: number) => formatValue(valueM, 'mm');
  return line(
    'Moment arm of the strut',
    'u = a·b·sin γ / ℓ,  ℓ² = a² + b² − 2ab·cos γ',
    `${millimetres(coupling.frameArmM)} · ${millimetres(coupling.featureArmM)} · sin ${formatValue(strutAngleRad(coupling, position), 'deg')} / ${millimetres(strutLengthM(coupling, position))}`,
    millimetres(ratio),
    mechanicsBook('M4'),
  );
}

function ratioText({ prepared }: Worked, ratio: number): string {
  const { coupling, load, drive } = prepared.model;
  if (coupling.kind === 'strut') return formatValue(ratio, 'mm');
  const perMetre = !load.isHinge && drive.motion === 'rotary';
  return perMetre ? `${decimal(ratio, 1)} rad/m` : plain(ratio);
}
