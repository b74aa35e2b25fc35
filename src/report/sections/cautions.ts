import type { Caution, CautionSeverity } from '../../assess/assessment.js';
import { listed } from '../../assess/figures.js';
import { labelOf, type ReportContext } from '../context.js';
import type { Block, CautionBlock } from '../document.js';
import type { Filling } from '../template/fill-template.js';
import { plain, strong } from '../template/inline.js';
import { counted } from '../words/figures.js';

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
    severe_elsewhere: severeElsewhere(context, raised),
    elsewhere: elsewhereCount(context),
    raised: { blocks: cautionBlocks(context, here, raised) },
    standing: { blocks: standing.length === 0 ? [] : [standingTable(standing)] },
    codes_first: first?.text ?? context.phrases('codes-first'),
    followed: listed(context.focus.map((candidate) => candidate.label)),
  };
  return [{ values, charts: {} }];
}

/** The cautions that found no room on the first pages, candidate by candidate; no section when there are none. */
export function furtherCautionsSection(context: ReportContext): Filling[] {
  const blocks = furtherBlocks(context);
  const followed = listed(context.focus.map((candidate) => candidate.label));
  return blocks.length === 0 ? [] : [{ values: { further: { blocks }, followed }, charts: {} }];
}

function furtherBlocks(context: ReportContext): Block[] {
  const raised = context.assessment.cautions.filter((caution) => !isStanding(caution));
  const rest = raised.filter((caution) => !belongsHere(context, caution));
  return context.candidates.flatMap((candidate): Block[] => {
    const own = rest.filter((caution) => caution.candidate === candidate.id);
    if (own.length === 0) return [];
    const heading: Block = { kind: 'heading', level: 3, text: candidate.label, id: candidate.id };
    return [heading, ...cautionBlocks(context, own, []).map((block) => ({ ...block, about: '' }))];
  });
}

/** How many boxes stand under the further cautions; empty when none does. */
function elsewhereCount(context: ReportContext): string {
  const count = furtherBlocks(context).filter(({ kind }) => kind === 'caution').length;
  return count === 0 ? '' : counted(count, 'caution');
}

/**
 * How many severe cautions are told neither in a box here nor behind the “Also” of one, and whose they are: a count
 * of severe ones above boxes that are none would read as a slip. Empty when every severe one is told here.
 */
function severeElsewhere(context: ReportContext, raised: Caution[]): string {
  const severe = raised.filter((caution) => caution.severity === 'severe');
  const here = severe.filter((caution) => belongsHere(context, caution));
  const told = new Set(here.filter(({ candidate }) => candidate !== null).map(sameKey));
  const missing = severe.filter((caution) => !here.includes(caution) && !told.has(sameKey(caution)));
  if (missing.length === 0) return '';
  const labels = new Set(missing.map(({ candidate }) => labelOf(context, candidate ?? '')));
  return context.phrases('cautions-severe-elsewhere', {
    severe: counted(missing.length, 'severe caution'),
    candidates: [...labels].join('; '),
  });
}

const figures = /\d[\d.,]*(?:\s(?:ms|s|min|h|g|kg|mA|A|J)\b)?/gu;

/**
 * Alike for cautions that say the same of different candidates: the same words around other figures, and the same
 * advice. One code can stand for more than one sentence.
 */
function sameKey({ severity, code, candidate, text, action }: Caution): string {
  const words = candidate === null ? text : text.replace(figures, '#');
  return [severity, code, candidate === null ? '' : 'one', words, action].join('\n');
}

/** What was raised about one candidate, counted; empty when nothing was. */
export function cautionLine(context: ReportContext, id: string): string {
  const own = context.assessment.cautions.filter((caution) => caution.candidate === id);
  const words = { severe: 'severe caution', caution: 'caution', note: 'note' };
  const counts = order.map((severity) => ({
    severity,
    count: own.filter((one) => one.severity === severity).length,
  }));
  const parts = counts
    .filter(({ count }) => count > 0)
    .map(({ severity, count }) => counted(count, words[severity]));
  return parts.length === 0 ? '' : context.phrases('caution-line', { cautions: listed(parts) });
}

/**
 * The first pages carry the cautions of the whole feature, those of who leads and what exists, and everything severe
 * about the others that could be chosen. Mere notes about a candidate can wait.
 */
function belongsHere(context: ReportContext, caution: Caution): boolean {
  if (caution.candidate === null) return true;
  if (caution.severity === 'note') return false;
  if (context.focus.some((candidate) => candidate.id === caution.candidate)) return true;
  const candidate = context.candidates.find((one) => one.id === caution.candidate);
  return caution.severity === 'severe' && candidate?.passes !== false;
}

function isStanding(caution: Caution): boolean {
  return caution.figure === '' && caution.candidate === null;
}

/**
 * One box for all cautions that say the same: the first in words, other candidates with their figures.
 *
 * @param among where other candidates with the same caution are looked for
 */
function cautionBlocks(context: ReportContext, cautions: Caution[], among: Caution[]): CautionBlock[] {
  const groups = new Map<string, Caution[]>();
  for (const caution of [...cautions].sort((a, b) => order.indexOf(a.severity) - order.indexOf(b.severity))) {
    const key = sameKey(caution);
    groups.set(key, [...(groups.get(key) ?? []), caution]);
  }
  return [...groups.values()].map(([first]) => {
    const { severity, candidate, figure, text, action } = first!;
    const isSame = (one: Caution): boolean => one !== first && sameKey(one) === sameKey(first!);
    const others = candidate === null ? [] : among.filter(isSame);
    const also = others.map((one) => `${labelOf(context, one.candidate ?? '')} ${one.figure}`);
    return {
      kind: 'caution',
      severity,
      label: context.phrases(`severity-${severity}`),
      about: candidate === null ? '' : labelOf(context, candidate),
      figure,
      text: plain(
        also.length === 0 ? text : `${text} ${context.phrases('caution-also', { others: also.join('; ') })}`,
      ),
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
    compact: true,
  };
}
