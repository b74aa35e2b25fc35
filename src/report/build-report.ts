import type { Assessment } from '../assess/assessment.js';
import { type ReportContext, reportContext } from './context.js';
import type { Block, ReportDocument, Section } from './document.js';
import { aboutValues } from './sections/about.js';
import { sectionSources } from './sections/section-source.js';
import { type Filling, fillLine, fillTemplate } from './template/fill-template.js';
import { textOf } from './template/inline.js';
import { type ParsedTemplate, parseTemplate } from './template/parse-template.js';
import { TemplateError, type Templates, templateText } from './template/template-error.js';

const contentsFile = 'report/contents.md';

/**
 * Turns an assessment into a document: words, tables and charts as data; no fonts, no points.
 *
 * The order of the sections is the list in `report/contents.md`; each is worded in `report/<name>.md`.
 *
 * @param templates texts of all templates by their path below `templates/`
 * @param date ISO date to print when the study names none
 * @throws TemplateError with file and line for a template that asks for something nobody knows
 */
export function buildReport(assessment: Assessment, templates: Templates, date: string): ReportDocument {
  const context = reportContext(assessment, templates, date);
  const { about } = context.assessment.study;
  const sections = sectionNames(templates).flatMap(({ name, line }) => buildSections(context, name, line));
  const [first] = sections;
  if (first) first.blocks.unshift(...letterhead(context));
  return {
    title: about.question || about.project,
    subtitle: about.project,
    author: about.preparedBy,
    subject: context.assessment.answer.sentence,
    keywords: ['drive comparison', `inputs ${context.assessment.inputHash}`],
    language: 'en',
    date: context.date,
    footer: footer(context),
    pageNumber: context.phrases('page-number'),
    appendixTitle: context.phrases('appendix'),
    sections,
  };
}

function sectionNames(templates: Templates): { name: string; line: number }[] {
  const { nodes } = parseTemplate(contentsFile, templateText(templates, contentsFile));
  return nodes
    .flatMap((node) => (node.kind === 'list' ? node.items : []))
    .map(({ line, parts }) => ({
      line,
      name: parts.map((part) => ('text' in part ? part.text : '')).join(''),
    }));
}

function buildSections(context: ReportContext, name: string, line: number): Section[] {
  const source = Object.hasOwn(sectionSources, name) ? sectionSources[name] : undefined;
  if (!source) {
    const known = Object.keys(sectionSources).join(', ');
    throw new TemplateError(contentsFile, line, `there is no section ${name}; known are ${known}`);
  }
  return source(context).map((filling) => buildSection(context, name, filling));
}

/** One section worded in `report/<name>.md`. */
export function buildSection(context: ReportContext, name: string, filling: Filling): Section {
  const file = `report/${name}.md`;
  const template = parseTemplate(file, templateText(context.templates, file));
  const title = setting(file, template, 'title', filling) ?? name;
  const part = setting(file, template, 'part', filling) === 'appendix' ? 'appendix' : 'answer';
  return {
    name,
    title,
    runningHead: context.phrases(`running-head-${part}`, { title }),
    part,
    startsPage: setting(file, template, 'starts-page', filling) !== 'no',
    blocks: fillTemplate(file, template, filling),
  };
}

function setting(file: string, template: ParsedTemplate, name: string, filling: Filling): string | null {
  const entry = template.settings[name];
  return entry ? textOf(fillLine(file, entry.line, entry.parts, filling)) : null;
}

function letterhead(context: ReportContext): Block[] {
  const file = 'report/letterhead.md';
  const template = parseTemplate(file, templateText(context.templates, file));
  return fillTemplate(file, template, { values: aboutValues(context), charts: {} });
}

/** Program, model and inputs in a line, for the foot of every page. */
export function footer({ assessment, phrases }: ReportContext): string {
  const hash = assessment.inputHash.slice(0, 12);
  return phrases('footer', { version: assessment.version, model: assessment.modelVersion, hash });
}
