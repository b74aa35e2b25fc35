import { readAssumptions } from '../../src/input/read-assumptions.js';
import { type Change, readStudy } from '../../src/input/read-study.js';
import type { Issue } from '../../src/problem/issue.js';
import type { Provenance } from '../../src/study/provenance.js';
import type { Study } from '../../src/study/study.js';

/** Text or bytes of each file of a study folder. */
export type Files = Record<string, string | Uint8Array>;

/** A small invented study without errors or warnings; the numbers are round so that tests can be read. */
export const goodFiles: Files = {
  'study.csv': `item,value,unit,note
question,Keep the servo?,,
project,Test wing,,
feature.mass,500 g,,
feature.balance_distance,200 mm,,
feature.tip_distance,500 mm,,
feature.lower_stop,-30,,
feature.upper_stop,60,,
carrier.worn,yes,,
pack.choice,pack-a,,
baseline,servo-a,,
target.runtime,90,,
`,
  'candidates.csv': `id,type,rated_voltage,no_load_speed,stall_torque,stall_force,stall_current,stroke,mass
servo-a,position-servo,7.4 V,0.2 s/60deg,35 kg·cm,,4 A,,80 g
worm-a,worm-gearmotor,12 V,15 rpm,60 kg·cm,,2.4 A,,260 g
screw-a,screw-actuator,12 V,20 mm/s,,200 N,1.8 A,100 mm,290 g
`,
  'show.csv': `cue,action,to,seconds,law,lights,note
rise,move,40,4,,100,
show,hold,,30,,100,
fold,move,-30,4,,50,
sleep,rest,,20,,20,
`,
  'packs.csv': `id,label,chemistry,cells,capacity,mass
pack-a,2S pack,lipo,2,2200 mAh,120 g
`,
};

/** The good study with one text in one file replaced; fails when the text is not there. */
export function edited(file: string, from: string, to: string, files: Files = goodFiles): Files {
  const text = files[file];
  if (typeof text !== 'string' || !text.includes(from)) throw new Error(`${file} has no “${from}”`);
  return { ...files, [file]: text.replace(from, to) };
}

/** The good study with a file added, replaced, or taken away. */
export function withFile(file: string, content: string | Uint8Array | null, files: Files = goodFiles): Files {
  const { [file]: _, ...others } = files;
  return content === null ? others : { ...others, [file]: content };
}

const shipped = readAssumptions();

/** Reads files as a study with the assumptions as they ship. */
export function readFiles(files: Files, changes: readonly (string | Change)[] = [], assumptions = shipped) {
  const encoder = new TextEncoder();
  const inputs = Object.entries(files).map(([name, content]) => ({
    name,
    bytes: typeof content === 'string' ? encoder.encode(content) : content,
  }));
  return readStudy(inputs, assumptions, changes);
}

/** The study in the files; fails with the issues when there are errors. */
export function studyIn(files: Files, changes: readonly (string | Change)[] = []): Study {
  const result = readFiles(files, changes);
  if (!result.ok) throw new Error(result.issues.map(({ message }) => message).join('\n'));
  return result.value;
}

/** The issues of the files. */
export function issuesIn(files: Files, changes: readonly (string | Change)[] = []): Issue[] {
  return readFiles(files, changes).issues;
}

/** The history of one value. */
export function historyOf(study: Study, path: string): Provenance {
  const found = study.provenance.find((entry) => entry.path === path);
  if (found === undefined) throw new Error(`no provenance for ${path}`);
  return found;
}

/** A broken study and the one issue it must give. */
export interface BrokenCase {
  title: string;
  files: Files;
  changes?: string[];
  code: string;
  file: string;
  line: number | null;
  column: string | null;
  /** Part of the hint. */
  hint: string;
  severity?: 'warning';
  /** Codes of further errors that follow from the first. */
  others?: string[];
}
