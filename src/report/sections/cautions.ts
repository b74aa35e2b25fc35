import type { Caution, CautionSeverity } from '../../assess/assessment.js';
import { labelOf, type ReportContext } from '../context.js';
import type { Block, CautionBlock } from '../document.js';
import type { Filling } from '../template/fill-template.js';
import { plain, strong } from '../template/inline.js';
import { counted, listed } from '../words/figures.js';

const order: CautionSeverity[] = ['severe', 'caution', 'note'];

/** Page three: what the numbers warn of, most severe first, then the cautions that always stand. */
export function cautionsSection(context: ReportContext): Filling[] {
  const { cautions } = context.assessment;
  const raised = cautions.filter((caution) => !isStanding(caution));
  const here = raised.filter((caution) => belongsHere(context, caution));
  const standing = cautions.filter((caution) => isStanding(caution) && caution.code !== 'codes-first');
  const count = (severity: CautionSeverity) => raised.filter((one) => one.severity === severity).length;
  const first = cautions.find((caution) => caution.code === 'codes-first');
  const values = {
    severe_count: counted(count('severe'), 'severe caution'),
    caution_count: counted(count('caution'), 'caution'),
    note_count: counted(count('note'), 'note'),
    elsewhere_count: here.length === raised.length ? '' : counted(raised.length - here.length, 'caution'),
    raised: { blocks: cautionBlocks(context, here) },
    standing: { blocks: standing.length === 0 ? [] : [standingTable(standing)] },
    codes_first: first?.text ?? context.phrases('codes-first'),
    followed: listed(context.focus.map((candidate) => candidate.label)),
  };
  return [{ values, charts: {} }];
}

/** The cautions that concern one candidate. */
export function candidateCautions(context: ReportContext, id: string): Block[] {
  const own = context.assessment.cautions.filter((caution) => caution.candidate === id);
  return cautionBlocks(context, own).map((block) => ({ ...block, about: '' }));
}

/** Cautions of the whole feature, of who leads and what exists, and everything severe stand on the first pages. */
function belongsHere(context: ReportContext, caution: Caution): boolean {
  const followed = context.focus.some((candidate) => candidate.id === caution.candidate);
  return caution.candidate === null || followed || caution.severity === 'severe';
}

function isStanding(caution: Caution): boolean {
  return caution.figure === '' && caution.candidate === null;
}

/** One box per kind of caution and severity: the first in words, the other candidates with their figures. */
function cautionBlocks(context: ReportContext, cautions: Caution[]): CautionBlock[] {
  const groups = new Map<string, Caution[]>();
  for (const caution of [...cautions].sort((a, b) => order.indexOf(a.severity) - order.indexOf(b.severity))) {
    const key = `${caution.severity} ${caution.code} ${caution.candidate === null ? caution.text : ''}`;
    groups.set(key, [...(groups.get(key) ?? []), caution]);
  }
  return [...groups.values()].map(([first, ...others]) => {
    const { severity, candidate, figure, text, action } = first!;
    const also = others.map((one) => `${labelOf(context, one.candidate ?? '')} ${one.figure}`);
    return {
      kind: 'caution',
      severity,
      label: context.phrases(`severity-${severity}`),
      about: candidate === null ? '' : labelOf(context, candidate),
      figure,
      text: plain(also.length === 0 ? text : `${text} ${context.phrases('caution-also', { others: also.join('; ') })}`),
      action: plain(action),
    };
  });
}

function standingTable(standing: Caution[]): Block {
  return {
    kind: 'table',
    title: '',
    columns: [
      { heading: 'Always', unit: '', align: 'left', share: 1 },
      { heading: 'What to do', unit: '', align: 'left', share: 1 },
    ],
    rows: standing.map(({ text, action }) => ({ cells: [{ text: strong(text) }, { text: plain(action) }] })),
    note: [],
    rowHeads: true,
  };
}
