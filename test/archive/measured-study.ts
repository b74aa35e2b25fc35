import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { DecideTools } from '../../src/app/decide.js';
import { assessStudy } from '../../src/app/study.js';
import { bytesOf } from '../../src/archive/digest.js';
import type { InputFile } from '../../src/input/files.js';
import { readAssumptions } from '../../src/input/read-assumptions.js';
import { readStudy } from '../../src/input/read-study.js';
import type { Study } from '../../src/study/study.js';
import { quickReport } from './small-study.js';

/** An invented fox tail with two drives, on a stand that its makers know well. */
const texts: Record<string, string> = {
  'study.csv': `item,value
question,Should the fox's tail keep its servo?
project,Fox on a shop counter
date,2026-02-01
feature.mass,900 g ±2%
feature.balance_distance,26 cm ±2%
feature.tip_distance,48 cm
feature.lower_stop,-30 deg
feature.upper_stop,60 deg
feature.friction,0.03 N·m ±5%
carrier.worn,no
pack.choice,counter-pack
baseline,tail-servo
target.runtime,100
draws,512
`,
  'candidates.csv': `id,label,type,rated_voltage,no_load_speed,no_load_current,stall_torque,stall_current,figures_from,idle_current,pulse_frequency,control,position_feedback,mass,rework_hours,price
tail-servo,Tail servo,position-servo,7.4 V,0.25 s/60deg,0.2 A ±5%,42 kg·cm ±4%,3.4 A ±4%,measured,9 mA ±5%,300 Hz,,,72 g,0 h,0
tail-worm,Tail worm,worm-gearmotor,12 V,14 rpm,0.15 A,110 kg·cm,3.5 A,listing,,,position,yes,290 g,11 h,40
`,
  'show.csv': `cue,action,to,seconds
,loop,,
up,move,40,3
wait,hold,,30
down,move,5,2
listen,hold,,20
home,move,-30,4
rest,rest,,15
`,
  'packs.csv': `id,chemistry,cells,capacity,cell_resistance,mass,figures_from
counter-pack,lipo,2,1000 mAh ±6%,14 mΩ ±10%,60 g,measured
`,
  'criteria.csv': `criterion,weight,worth_0_at,worth_1_at,must
runtime,3,50 min,90 min,
rework_hours,2,12 h,0 h,
hold_power,1,5 W,0 W,
`,
};

/** Readings on the servo as it is when every figure is as written: it holds with less than is usual. */
export const readings = `quantity,value
runtime,80 min ±2 min
hold_current,712 mA ±15 mA
`;

/** Readings on a servo that is worse than its figures. */
export const poorReadings = `quantity,value
runtime,62 min ±2 min
hold_current,900 mA ±20 mA
`;

/** Files of the study, with files changed or added where asked. */
export function measuredStudy(changes: Record<string, (text: string) => string> = {}): InputFile[] {
  return [...new Set([...Object.keys(texts), ...Object.keys(changes)])].map((name) => {
    const text = texts[name] ?? '';
    const changed = changes[name]?.(text) ?? text;
    if (name in changes && changed === text) throw new Error(`the change leaves ${name} as it was`);
    return { name, bytes: bytesOf(changed) };
  });
}

/** The study of its files. */
export function studyFrom(files: InputFile[]): Study {
  const read = readStudy(files, readAssumptions(), []);
  if (!read.ok) throw new Error(read.issues.map(({ message }) => message).join('\n'));
  return read.value;
}

/** Decides with all draws of a study; the PDF is one in name only. */
export const drawnTools: DecideTools = {
  assess: (request) => assessStudy(request, 'ranking'),
  report: quickReport,
};

/** What results.json of a record says, read without help of the program. */
export const filedResults = (folder: string) =>
  JSON.parse(readFileSync(join(folder, 'data/results.json'), 'utf8'));
