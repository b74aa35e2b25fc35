import type { Finding } from '../drives/finding.js';
import type { DriveSheet } from '../drives/sheet.js';
import { strutAngleRad, strutLengthM } from '../physics/linkage.js';
import { formatValue } from '../quantity/format.js';
import type { Feature } from '../study/feature.js';
import type { CandidateModel } from './candidate-model.js';
import { givenPivots } from './mechanics.js';
import type { Failure } from './outcome.js';

/** Least moment arm as a share of the smaller pivot arm. */
const leastArmFraction = 0.05;

/** Longest over shortest strut of a rod drive whose closed length is not known. */
const oddLengthRatio = 1.7;
const impossibleLengthRatio = 2;

/** Points over the range, ends included; the tests are smooth between them. */
const pointCount = 201;

/** What a strut cannot do over the range of the cues, and what is worth knowing about it. (M4) */
export interface LinkageVerdict {
  failures: Failure[];
  findings: Finding[];
}

/** Test a strut over its range; other couplings have nothing to test here. */
export function checkLinkage(model: CandidateModel, sheet: DriveSheet, feature: Feature): LinkageVerdict {
  if (model.coupling.kind !== 'strut') return { failures: [], findings: [] };
  const span = lengthsOver(model, model.range.lowest, model.range.highest);
  return {
    failures: [...armFailures(model), ...lengthFailures(span, sheet), ...unknownLength(model, sheet)],
    findings: [...ratioFindings(span, sheet), ...stopFindings(model, sheet, feature)],
  };
}

interface LengthSpan {
  shortestM: number;
  longestM: number;
  shortestAt: number;
  longestAt: number;
}

function lengthsOver(model: CandidateModel, from: number, to: number): LengthSpan {
  const span = { shortestM: Number.POSITIVE_INFINITY, longestM: 0, shortestAt: from, longestAt: from };
  for (let i = 0; i < pointCount; i++) {
    const position = from + ((to - from) * i) / (pointCount - 1);
    const lengthM = strutLengthM(model.coupling, position);
    if (lengthM < span.shortestM) Object.assign(span, { shortestM: lengthM, shortestAt: position });
    if (lengthM > span.longestM) Object.assign(span, { longestM: lengthM, longestAt: position });
  }
  return span;
}

const angle = (position: number): string => formatValue(position, 'deg');
const length = (lengthM: number): string => formatValue(lengthM, 'mm');

/** Dead centre, or a moment arm too short, at the first position where it happens. */
function armFailures(model: CandidateModel): Failure[] {
  const { coupling, range } = model;
  const leastM = leastArmFraction * Math.min(coupling.frameArmM, coupling.featureArmM);
  let worst = { armM: Number.POSITIVE_INFINITY, position: range.lowest };
  for (let i = 0; i < pointCount; i++) {
    const position = range.lowest + ((range.highest - range.lowest) * i) / (pointCount - 1);
    const armM =
      (coupling.frameArmM * coupling.featureArmM * Math.sin(strutAngleRad(coupling, position))) /
      strutLengthM(coupling, position);
    if (armM < worst.armM) worst = { armM, position };
  }
  if (worst.armM >= leastM) return [];
  const reason =
    worst.armM <= 0
      ? `the strut passes its dead centre before ${angle(worst.position)}: no force there turns the feature`
      : `at ${angle(worst.position)} the strut's moment arm is only ${length(worst.armM)}, ` +
        `under ${length(leastM)} (5 % of the smaller pivot arm)`;
  return [{ code: 'linkage', position: worst.position, reason, value: worst.armM, limit: leastM }];
}

function lengthFailures(span: LengthSpan, sheet: DriveSheet): Failure[] {
  const failures: Failure[] = [];
  const closedM = sheet.closedLengthM;
  const strokeM = sheet.strokeM ?? Number.POSITIVE_INFINITY;
  if (closedM === null) {
    const ratio = span.longestM / span.shortestM;
    if (ratio >= impossibleLengthRatio) {
      failures.push({
        code: 'linkage',
        position: span.longestAt,
        reason:
          `the strut would have to grow ${ratio.toFixed(2)} times, from ${length(span.shortestM)} at ` +
          `${angle(span.shortestAt)} to ${length(span.longestM)} at ${angle(span.longestAt)}; ` +
          'a single rod drive cannot double its length',
        value: ratio,
        limit: impossibleLengthRatio,
      });
    }
    if (span.longestM - span.shortestM > strokeM) {
      failures.push({
        code: 'linkage',
        position: span.longestAt,
        reason:
          `the cues need ${length(span.longestM - span.shortestM)} of travel, ` +
          `the drive has a stroke of ${length(strokeM)}`,
        value: span.longestM - span.shortestM,
        limit: strokeM,
      });
    }
    return failures;
  }
  if (span.shortestM < closedM) {
    failures.push({
      code: 'linkage',
      position: span.shortestAt,
      reason:
        `at ${angle(span.shortestAt)} the strut would be ${length(span.shortestM)} long, ` +
        `shorter than its closed length of ${length(closedM)}`,
      value: span.shortestM,
      limit: closedM,
    });
  }
  if (span.longestM > closedM + strokeM) {
    failures.push({
      code: 'linkage',
      position: span.longestAt,
      reason:
        `at ${angle(span.longestAt)} the strut would be ${length(span.longestM)} long, ` +
        `beyond its ${length(closedM + strokeM)} fully out`,
      value: span.longestM,
      limit: closedM + strokeM,
    });
  }
  return failures;
}

/** Pivots that the tool proposed for a drive of unknown length say nothing about whether it goes in between. */
function unknownLength({ range }: CandidateModel, sheet: DriveSheet): Failure[] {
  if (sheet.closedLengthM !== null || givenPivots(sheet) !== null) return [];
  const reason = 'nobody said how long the drive is when drawn in, so that no pivots can be fitted';
  const open = { value: null, limit: null, missing: 'closed_length' };
  return [{ code: 'linkage', position: range.lowest, reason, ...open }];
}

function ratioFindings(span: LengthSpan, sheet: DriveSheet): Finding[] {
  const ratio = span.longestM / span.shortestM;
  if (sheet.closedLengthM !== null || ratio <= oddLengthRatio || ratio >= impossibleLengthRatio) return [];
  return [
    {
      code: 'strut-grows-much',
      severity: 'odd',
      field: 'closed_length',
      message:
        `The strut grows ${ratio.toFixed(2)} times; few rod drives pass ${oddLengthRatio}. ` +
        'Give closed_length to be sure.',
    },
  ];
}

/** A mechanical stop that the drive cannot reach, or would be driven past. */
function stopFindings(model: CandidateModel, sheet: DriveSheet, feature: Feature): Finding[] {
  const closedM = sheet.closedLengthM;
  if (closedM === null || sheet.strokeM === null) return [];
  const longestM = closedM + sheet.strokeM;
  const stops = [
    { name: 'lower', field: 'feature.lower_stop', position: feature.lowerStopPosition },
    { name: 'upper', field: 'feature.upper_stop', position: feature.upperStopPosition },
  ];
  return stops.flatMap(({ name, field, position }) => {
    const lengthM = strutLengthM(model.coupling, position);
    if (lengthM >= closedM && lengthM <= longestM) return [];
    return [
      {
        code: 'stop-out-of-reach',
        severity: 'note',
        field,
        message:
          `At the ${name} stop (${angle(position)}) the strut would be ${length(lengthM)} long; it reaches ` +
          `${length(closedM)} to ${length(longestM)}. Its own end becomes the stop.`,
      } satisfies Finding,
    ];
  });
}
