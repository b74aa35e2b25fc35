import type { ReportContext } from '../context.js';
import type { Filling } from '../template/fill-template.js';
import { answerSection } from './answer.js';
import { candidateSections } from './candidate.js';
import { cautionsSection, furtherCautionsSection } from './cautions.js';
import { inputsSection } from './inputs.js';
import { notModelledSection } from './not-modelled.js';
import { provenanceSection } from './provenance.js';
import { whySection } from './why.js';

/** What a section's template can name; one entry per time the section appears. */
export type SectionSource = (context: ReportContext) => Filling[];

/**
 * Every section by the name of its template `report/<name>.md`. A new section is one file, one template, one line here
 * and one line in `report/contents.md`, which sets the order.
 */
export const sectionSources: Record<string, SectionSource> = {
  answer: answerSection,
  why: whySection,
  cautions: cautionsSection,
  candidate: candidateSections,
  'further-cautions': furtherCautionsSection,
  inputs: inputsSection,
  'not-modelled': notModelledSection,
  provenance: provenanceSection,
};
