import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.js';
import { blanksOf } from '../../src/assess/blanks.js';
import { limitsOf, passesAll } from '../../src/assess/limits.js';
import { simulateCandidate } from '../../src/simulate/candidate.js';
import { goodFiles, studyIn } from '../input/good-study.js';
import { candidate, run, study } from './hand-made.js';

/** A worm on a show that stops between its lowest and its highest position, with these cells added. */
function stopping(columns = '', cells = '') {
  const read = studyIn({
    ...goodFiles,
    'candidates.csv': `id,type,rated_voltage,no_load_speed,stall_torque,stall_current,mass${columns}
servo-a,position-servo,7.4 V,0.2 s/60deg,35 kg·cm,4 A,80 g${cells.replace(/[^,]/g, '')}
worm-a,worm-gearmotor,12 V,15 rpm,60 kg·cm,2.4 A,260 g${cells}
`,
    'show.csv': 'action,to,seconds\nmove,10,4\nhold,,20\nmove,40,4\nhold,,20\nmove,-30,6\nrest,,20\n',
  });
  const worm = read.candidates[1]!;
  return limitsOf({ study: read, candidate: worm, run: simulateCandidate(read, worm) });
}

const positions = (limits: ReturnType<typeof stopping>) =>
  limits.find(({ criterion }) => criterion === 'positions');

describe('a stop between the ends of a switched drive', () => {
  it('is not judged while nobody said whether the drive knows where it is', () => {
    expect(positions(stopping())).toMatchObject({ passes: null, margin: null, missing: 'position_feedback' });
    expect(passesAll(stopping())).not.toBe(false);
  });

  it('fails a drive that is known to have no feedback', () => {
    expect(positions(stopping(',position_feedback', ',no'))).toMatchObject({ passes: false });
  });

  it.each([
    ['has feedback', ',position_feedback', ',yes'],
    ['is driven to positions', ',control', ',position'],
  ])('is no matter for one that %s', (_, columns, cells) => {
    expect(positions(stopping(columns, cells))).toBeUndefined();
  });
});

describe('a way of failing that waits for a blank', () => {
  it('fails all the same where the drive fails in that way for sure', () => {
    const failure = { code: 'linkage', position: 0, reason: 'too long', value: 2, limit: 1 } as const;
    const open = { ...failure, value: null, limit: null, missing: 'closed_length' };
    const one = candidate('a');
    const limits = limitsOf({
      study: study([one], []),
      candidate: one,
      run: run('a', {}, { failures: [open, failure] }),
    });
    expect(limits.filter(({ criterion }) => criterion === 'linkage')).toMatchObject([
      { passes: false, reason: 'too long' },
    ]);
  });
});

describe('what to fill in first', () => {
  const waiting = {
    code: 'positions',
    position: 0,
    reason: 'stops between',
    value: null,
    limit: null,
  } as const;
  const assessed = (...runs: ReturnType<typeof run>[]) =>
    assess(
      study(
        runs.map(({ id }) => candidate(id)),
        [],
      ),
      runs,
      { version: '0', inputHash: '', inputs: [] },
    );

  it('is the blank that a limit waits for, once for all candidates that have it', () => {
    const failures = [{ ...waiting, missing: 'position_feedback' }];
    const [blank, ...others] = blanksOf(
      assessed(run('a', {}, { failures }), run('b', {}, { failures }), run('c')),
    );
    expect(blank).toMatchObject({ field: 'position_feedback', candidates: ['a', 'b'] });
    expect(blank!.meaning).toContain('between its end switches');
    expect(others).toEqual([]);
  });

  it('is nothing for a candidate that fails another limit anyway', () => {
    const failures = [{ ...waiting, missing: 'position_feedback' }];
    expect(blanksOf(assessed(run('a', { busVoltageV: 20 }, { failures })))).toEqual([]);
  });
});
