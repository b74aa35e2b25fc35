import { describe, expect, it } from 'vitest';
import { drawnCriterion } from '../../src/assess/certainty/drawn-figures.js';
import { limitsOf } from '../../src/assess/limits.js';
import { criterionOutcomes } from '../../src/assess/scores.js';
import { simulateCandidate } from '../../src/simulate/candidate.js';
import { outcomeIndex } from '../../src/simulate/ensemble/ensemble.js';
import { historyOf, issuesIn, studyIn, withFile } from '../input/good-study.js';

/** Two worms that differ in their noise only, and a limit on it. */
function noisy(a: string, b: string) {
  const files = withFile(
    'candidates.csv',
    `id,type,rated_voltage,no_load_speed,stall_torque,stall_current,mass,noise,noise_distance
servo-a,worm-gearmotor,12 V,15 rpm,60 kg·cm,2.4 A,260 g,${a}
worm-b,worm-gearmotor,12 V,15 rpm,60 kg·cm,2.4 A,260 g,${b}
`,
  );
  return withFile(
    'criteria.csv',
    'criterion,weight,worth_0_at,worth_1_at,must\nnoise,1,70 dB,40 dB,at most 58 dB\n',
    files,
  );
}

function judged(a: string, b: string) {
  const study = studyIn(noisy(a, b));
  return study.candidates.map((candidate) => {
    const one = { study, candidate, run: simulateCandidate(study, candidate) };
    const limit = limitsOf(one).find(({ criterion }) => criterion === 'noise')!;
    return { ...one, limit, worthScore: criterionOutcomes(one)[0]!.worthScore };
  });
}

describe('noise read at different distances', () => {
  // Free field: 60 dB + 20·log10(0.3) = 49.5 dB and 56 dB + 20·log10(2) = 62.0 dB at 1 m.
  const [near, far] = judged('60 dB,0.3 m', '56 dB,2 m');

  it('is judged at 1 m: 60 dB at 0.3 m is the quieter one beside 56 dB at 2 m', () => {
    expect(near!.limit).toMatchObject({ passes: true });
    expect(far!.limit).toMatchObject({ passes: false });
    expect(near!.run.nominal.noiseDb).toBeCloseTo(49.5424, 4);
    expect(far!.run.nominal.noiseDb).toBeCloseTo(62.0206, 4);
    expect(near!.worthScore).toBeGreaterThan(far!.worthScore);
  });

  it('is the same in every draw', () => {
    const columns = Object.keys(outcomeIndex).map(() => new Float64Array(3));
    expect([...drawnCriterion('noise', { judged: near!, columns })]).toEqual(
      Array(3).fill(near!.run.nominal.noiseDb),
    );
  });
});

describe('noise with no distance', () => {
  it('is taken as read at 1 m, which says so, and gains nothing beside the same figure read nearer', () => {
    const [blank, near] = judged('56 dB,', '56 dB,0.5 m');
    expect(blank!.run.nominal.noiseDb).toBe(56);
    expect(blank!.run.nominal.noiseDb).toBeGreaterThan(near!.run.nominal.noiseDb!);
    const history = historyOf(blank!.study, 'candidates.servo-a.sheet.noiseDistanceM');
    expect(history).toMatchObject({ origin: 'assumed', value: 1 });
    expect(history.basis).toContain('a blank is not to gain by that');
  });

  it('is nobody’s assumption where there is no noise either, and a distance alone is not used', () => {
    const study = studyIn(noisy(',', '56 dB,1 m'));
    const paths = study.provenance.map(({ path }) => path);
    expect(paths).not.toContain('candidates.servo-a.sheet.noiseDistanceM');
    expect(issuesIn(noisy(',0.5 m', '56 dB,1 m'))).toContainEqual(
      expect.objectContaining({ code: 'not-used', severity: 'warning', line: 2, column: 'noise_distance' }),
    );
  });
});
