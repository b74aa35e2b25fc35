import { describe, it } from 'vitest';
import { expectIssue } from './expect-issue.js';
import { type BrokenCase, edited, type Files, withFile } from './good-study.js';

/** The good study with other cues; the first stands in line 2. */
const cues = (...rows: string[]): Files =>
  withFile('show.csv', `cue,action,to,seconds,law,lights\n${rows.join('\n')}\n`);
const at = (line: number, column: string) => ({ file: 'show.csv', line, column });

const cases: BrokenCase[] = [
  {
    title: 'a hold that jumps',
    files: cues('rise,move,40,4,,', 'show,hold,20,30,,', 'fold,move,-30,4,,'),
    code: 'cue-jumps',
    ...at(3, 'to'),
    hint: 'put a move before it',
  },
  {
    title: 'a rest in the air',
    files: cues('rise,move,40,4,,', 'nap,rest,,30,,', 'fold,move,-30,4,,'),
    code: 'rest-off-stop',
    ...at(3, 'action'),
    hint: 'rest at -30 deg or 60 deg',
  },
  {
    title: 'a move beyond the stop',
    files: cues('rise,move,80,4,,', 'fold,move,-30,4,,'),
    code: 'beyond-stop',
    ...at(2, 'to'),
    hint: 'sign',
  },
  {
    title: 'a move without a goal',
    files: cues('rise,move,,4,,', 'fold,move,-30,4,,'),
    code: 'blank-required',
    ...at(2, 'to'),
    hint: 'position',
  },
  {
    title: 'a move to where it stands',
    files: cues('rise,move,40,4,,', 'again,move,40,4,,', 'fold,move,-30,4,,'),
    code: 'move-nowhere',
    severity: 'warning',
    ...at(3, 'to'),
    hint: 'use hold',
  },
  {
    title: 'a cue without seconds',
    files: cues('rise,move,40,,,', 'fold,move,-30,4,,'),
    code: 'blank-required',
    ...at(2, 'seconds'),
    hint: 'write its seconds',
  },
  {
    title: 'a cue of no seconds',
    files: cues('rise,move,40,0,,', 'fold,move,-30,4,,'),
    code: 'out-of-bounds',
    ...at(2, 'seconds'),
    hint: 'check the figure',
  },
  {
    title: 'an action nobody knows',
    files: cues('rise,moves,40,4,,', 'fold,move,-30,4,,'),
    code: 'unknown-choice',
    ...at(2, 'action'),
    hint: 'did you mean move?',
  },
  {
    title: 'a law nobody knows',
    files: cues('rise,move,40,4,poly345,', 'fold,move,-30,4,,'),
    code: 'unknown-choice',
    ...at(2, 'law'),
    hint: 'did you mean poly-345?',
  },
  {
    title: 'a loop that does not close',
    files: cues('up,move,10,4,,', ',loop,,,,', 'rise,move,40,4,,', 'stay,hold,,9,,'),
    code: 'loop-does-not-close',
    ...at(5, 'to'),
    hint: 'move to 10 deg',
  },
  {
    title: 'two loop rows',
    files: cues(',loop,,,,', 'rise,move,40,4,,', ',loop,,,,', 'fold,move,-30,4,,'),
    code: 'second-loop',
    ...at(4, 'action'),
    hint: 'delete one',
  },
  {
    title: 'a loop row at the end',
    files: cues('rise,move,40,4,,', 'fold,move,-30,4,,', ',loop,,,,'),
    code: 'empty-loop',
    ...at(4, 'action'),
    hint: 'below it',
  },
  {
    title: 'seconds in a loop row',
    files: cues(',loop,,5,,', 'rise,move,40,4,,', 'fold,move,-30,4,,'),
    code: 'not-used',
    severity: 'warning',
    ...at(2, 'seconds'),
    hint: 'empty the cell',
  },
  {
    title: 'a spread on a cue',
    files: cues('rise,move,40 ±2,4,,', 'fold,move,-30,4,,'),
    code: 'spread-not-used',
    severity: 'warning',
    ...at(2, 'to'),
    hint: 'without a spread',
  },
  {
    title: 'lights as a share',
    files: cues('rise,move,40,4,,0.8', 'fold,move,-30,4,,'),
    code: 'implausible',
    severity: 'warning',
    ...at(2, 'lights'),
    hint: '60 per cent',
  },
  {
    title: 'lights above full',
    files: cues('rise,move,40,4,,120', 'fold,move,-30,4,,'),
    code: 'out-of-bounds',
    ...at(2, 'lights'),
    hint: 'check',
  },
  {
    title: 'a length on a hinge',
    files: cues('rise,move,40 mm,4,,', 'fold,move,-30,4,,'),
    code: 'unit-of-another-dimension',
    ...at(2, 'to'),
    hint: 'deg',
  },
  {
    title: 'a show without seconds at all',
    files: withFile('show.csv', 'cue,action,to\nrise,move,40\nfold,move,-30\n'),
    code: 'missing-column',
    ...at(1, 'seconds'),
    hint: 'add seconds',
  },
  {
    title: 'a first cue that is not at the lower stop before a loop',
    files: cues('stay,hold,10,5,,', ',loop,,,,', 'rise,move,40,4,,', 'fold,move,-30,4,,'),
    code: 'cue-jumps',
    ...at(2, 'to'),
    hint: 'put a move before it',
  },
  {
    title: 'a part of the day that is no activity',
    files: withFile('day.csv', 'block,minutes,activity\nparade,45,shows\n'),
    code: 'unknown-choice',
    file: 'day.csv',
    line: 2,
    column: 'activity',
    hint: 'did you mean show?',
  },
  {
    title: 'a part of the day without minutes',
    files: withFile('day.csv', 'block,minutes,activity\nparade,,show\n'),
    code: 'blank-required',
    file: 'day.csv',
    line: 2,
    column: 'minutes',
    hint: 'running order',
  },
  {
    title: 'an unknown chemistry',
    files: edited('packs.csv', 'lipo', 'lipos'),
    code: 'unknown-choice',
    file: 'packs.csv',
    line: 2,
    column: 'chemistry',
    hint: 'did you mean lipo?',
  },
  {
    title: 'a load without voltage or converter',
    files: withFile('loads.csv', 'id,power\nlamps,3 W\n'),
    code: 'blank-required',
    file: 'loads.csv',
    line: 2,
    column: 'voltage',
    hint: 'printed on it',
  },
];

describe('a broken show, day or load is named', () => {
  it.each(cases)('$title', expectIssue);
});
