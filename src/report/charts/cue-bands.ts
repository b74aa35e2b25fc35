import type { CandidateAssessment } from '../../assess/assessment.js';
import type { ReportContext } from '../context.js';

/** Holds and rests of the loop as a candidate plays it, named where there is room; for charts along the loop. */
export function cueBands(context: ReportContext, candidate: CandidateAssessment) {
  const { leadIn, loop } = context.assessment.study.show;
  // Stretches are told for all moves in order, those played once first.
  const before = leadIn.filter((cue) => cue.action === 'move').length;
  const stretches = candidate.nominal.stretchRatios.slice(before);
  const wholeS = candidate.nominal.loopS ?? 0;
  let startS = 0;
  return loop.flatMap((cue) => {
    const stretch = cue.action === 'move' ? Math.max(1, stretches.shift() ?? 1) : 1;
    const band = { start: startS, end: startS + cue.durationS * stretch };
    startS = band.end;
    if (cue.action === 'move') return [];
    const hasRoom = band.end - band.start >= wholeS * 0.011 * (cue.name.length + 2);
    return [
      { ...band, middle: (band.start + band.end) / 2, name: hasRoom ? cue.name : '', action: cue.action },
    ];
  });
}
