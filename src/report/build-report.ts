import type { Assessment } from '../assess/assessment.js';
import { type ReportContext, type ReportWishes, reportContext } from './context.js';
import type { Block, ReportDocument, Section } from './document.js';
import { aboutValues } from './sections/about.js';
import { sectionSources } from './sections/section-source.js';
import { contentsFile, listedSections } from './template/contents.js';
import { type Filling, fillLine, fillTemplate } from './template/fill-template.js';
import { textOf } from './template/inline.js';
import { type ParsedTemplate, parseTemplate } from './template/parse-template.js';
import { gathered, type Templates, templateError, templateText } from './template/template-error.js';

/**
 * Turns an assessment into a document: words, tables and charts as data; no fonts, no points.
 *
 * The order of the sections is the list in `report/contents.md`; each is worded in `report/<name>.md`.
 *
 * @param templates texts of all templates by their path below `templates/`
 * @param date ISO date to print when the study names none
 * @throws TemplateError with file and line of everything that templates ask for and nobody knows
 */
export function buildReport(
  assessment: Assessment,
  templates: Templates,
  date: string,
  wishes: ReportWishes = {},
): ReportDocument {
  const context = reportContext(assessment, templates, date, wishes);
  const { about } = context.assessment.study;
  return {
    title: about.question || about.project,
    subtitle: about.project,
    author: about.preparedBy,
    subject: context.assessment.verdict.sentence,
    keywords: ['drive comparison', `inputs ${context.assessment.inputHash}`],
    language: 'en',
    date: context.date,
    footer: footer(context),
    pageNumber: context.phrases('page-number'),
    appendixTitle: context.phrases('appendix'),
    sections: buildSections(context),
  };
}

/** All sections in their order, the letterhead at the head of the first. */
function buildSections(context: ReportContext): Section[] {
  const names = listedSections(context.templates, Object.keys(sectionSources));
  const [head, drafts] = gathered([
    () => letterhead(context),
    () => gathered(names.map((name) => () => draftSections(context, name()))).flat(),
  ]);
  const sections = withParts(context, drafts);
  if (sections.length === 0) {
    throw templateError(contentsFile, 1, 'none of these sections has anything to say about this study');
  }
  sections[0]!.blocks.unshift(...head);
  return sections;
}

/** A section that does not know its place yet. */
type DraftSection = Omit<Section, 'part' | 'runningHead'> & { wantsAppendix: boolean };

function draftSections(context: ReportContext, name: string): DraftSection[] {
  return gathered(
    sectionSources[name]!(context).map((filling) => () => draftSection(context, name, filling)),
  );
}

function draftSection(context: ReportContext, name: string, filling: Filling): DraftSection {
  const file = `report/${name}.md`;
  const template = parseTemplate(file, templateText(context.templates, file));
  const [blocks, title, part, startsPage] = gathered([
    () => fillTemplate(file, template, filling),
    () => setting(file, template, 'title', filling) ?? name,
    () => choice(file, template, 'part', ['answer', 'appendix']),
    () => choice(file, template, 'starts-page', ['yes', 'no']),
  ]);
  return { name, title, blocks, wantsAppendix: part === 'appendix', startsPage: startsPage === 'yes' };
}

/** One section worded in `report/<name>.md`, standing alone. */
export function buildSection(context: ReportContext, name: string, filling: Filling): Section {
  return withParts(context, [draftSection(context, name, filling)])[0]!;
}

/**
 * The appendix begins behind the last section that belongs to the pages which stand alone; a section that was put
 * before it belongs to those pages too. Where there are none, nothing is an appendix to anything.
 */
function withParts(context: ReportContext, drafts: DraftSection[]): Section[] {
  const last = drafts.findLastIndex(({ wantsAppendix }) => !wantsAppendix);
  return drafts.map(({ wantsAppendix: _, ...section }, index): Section => {
    const part = last >= 0 && index > last ? 'appendix' : 'answer';
    const runningHead = context.phrases(`running-head-${part}`, { title: section.title });
    return { ...section, part, runningHead };
  });
}

function setting(file: string, template: ParsedTemplate, name: string, filling: Filling): string | null {
  const entry = template.settings[name];
  return entry ? textOf(fillLine(file, entry.line, entry.parts, filling)) : null;
}

/** A setting that takes one of a few words; the first when it is not there. */
function choice(file: string, template: ParsedTemplate, name: string, words: string[]): string {
  const chosen = setting(file, template, name, { values: {}, charts: {} }) ?? words[0]!;
  if (words.includes(chosen)) return chosen;
  const { line } = template.settings[name]!;
  throw templateError(file, line, `${name} is ${words.join(' or ')}, not ${chosen}`);
}

function letterhead(context: ReportContext): Block[] {
  const file = 'report/letterhead.md';
  const template = parseTemplate(file, templateText(context.templates, file));
  return fillTemplate(file, template, { values: aboutValues(context), charts: {}, images: context.images });
}

/** Program, model and inputs in a line, for the foot of every page. */
export function footer({ assessment, phrases }: ReportContext): string {
  const hash = assessment.inputHash.slice(0, 12);
  return phrases('footer', { version: assessment.version, model: assessment.modelVersion, hash });
}
