import { expect, it } from 'vitest';
import { beginDraws } from '../../../src/assess/certainty/draws.js';
import { readAssumptions } from '../../../src/input/read-assumptions.js';
import { readStudy } from '../../../src/input/read-study.js';
import { prepareCandidate } from '../../../src/simulate/candidate.js';
import { outcomeIndex } from '../../../src/simulate/ensemble/ensemble.js';
import { movingCurrentA } from '../../../src/simulate/motor-point.js';

/*
 * One public bench reading, common practice, a sanity check and no more: a servo labelled 20 kg·cm held 94 % of its
 * label on 0.4 A and took over 2.5 A to lift it. Nothing else of that servo is known; 6.6 V and 0.20 s/60° are usual
 * for the class (from memory), both currents are blank, and the arm is level with its weight at 100 mm.
 */
const files = {
  'study.csv': `item,value,unit,note
question,Is a hold current of 0.4 A inside the band?,,
project,bench,,
feature.mass,1.88 kg ±1%,,
feature.balance_distance,100 mm ±1%,,
feature.tip_distance,100 mm,,
feature.lower_stop,-30,,
feature.upper_stop,10,,
carrier.worn,no,,
pack.choice,bench,,
`,
  'candidates.csv': `id,type,rated_voltage,no_load_speed,stall_torque,maximum_voltage,mass
bench,position-servo,6.6 V,0.20 s/60deg,20 kg·cm,9 V,60 g
`,
  'show.csv': `cue,action,to,seconds
up,move,0,4
level,hold,,60
down,move,-30,4
lie,rest,,5
`,
  'packs.csv': `id,chemistry,cells,capacity,mass
bench,lipo,2,5000 mAh,200 g
`,
};

it('holds 94 % of a 20 kg·cm label within a band that contains 0.4 A, and lifts it on over 2.4 A', () => {
  const bytes = Object.entries(files).map(([name, text]) => ({
    name,
    bytes: new TextEncoder().encode(text),
  }));
  const read = readStudy(bytes, readAssumptions());
  if (!read.ok) throw new Error(read.issues.map(({ message }) => message).join('; '));
  const study = read.value;
  const effortNm = 1.88 * 9.80665 * 0.1;
  expect(effortNm / (20 * 0.0980665)).toBeCloseTo(0.94, 3);
  const held = beginDraws(study)
    .finish()
    .ensemble.outcomes[0]![outcomeIndex.holdPackCurrentA]!.slice()
    .sort();
  const at = (share: number) => held[Math.floor(share * held.length)]!;
  expect(at(0.1)).toBeLessThan(0.4);
  expect(at(0.9)).toBeGreaterThan(0.4);
  const { model } = prepareCandidate(study, study.candidates[0]!);
  expect(movingCurrentA(model, effortNm, 0)).toBeGreaterThan(2.4);
});
