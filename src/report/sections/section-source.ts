import type { ReportContext } from '../context.js';
import type { Filling } from '../template/fill-template.js';
import { answerSection } from './answer.js';
import { beforeYouRedesignSection } from './before-you-redesign.js';
import { candidateSections } from './candidate.js';
import { cautionsSection, furtherCautionsSection } from './cautions.js';
import { daySection } from './day.js';
import { heatSection } from './heat.js';
import { inputsSection } from './inputs.js';
import { massFitMoneySection } from './mass-fit-money.js';
import { notModelledSection } from './not-modelled.js';
import { orderSection } from './order.js';
import { powerCutSection } from './power-cut.js';
import { provenanceSection } from './provenance.js';
import { spreadSection } from './spread.js';
import { whySection } from './why.js';
import { workingSection } from './working.js';

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
  'before-you-redesign': beforeYouRedesignSection,
  'power-cut': powerCutSection,
  heat: heatSection,
  'mass-fit-money': massFitMoneySection,
  order: orderSection,
  spread: spreadSection,
  day: daySection,
  candidate: candidateSections,
  'further-cautions': furtherCautionsSection,
  working: workingSection,
  inputs: inputsSection,
  'not-modelled': notModelledSection,
  provenance: provenanceSection,
};
