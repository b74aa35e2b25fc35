import type { UnitSystem } from '../../quantity/display-units.js';
import type { ReportContext } from '../context.js';
import type { Block, Fact, TableBlock } from '../document.js';
import { cell, head, row, wordColumn } from '../tables/cells.js';
import type { Filling } from '../template/fill-template.js';
import { longDate } from './about.js';

/** Where this report comes from: enough to make it again and to tell whether it is the same. */
export function provenanceSection(context: ReportContext): Filling[] {
  const { assessment } = context;
  const facts: Block = {
    kind: 'facts',
    columns: 2,
    items: [
      { label: 'holdwright', value: assessment.version },
      { label: 'Model version', value: assessment.modelVersion },
      { label: 'Results format', value: assessment.format },
      { label: 'Date', value: longDate(context.date) },
      { label: 'Units', value: systemNames[context.system] },
      { label: 'Seed', value: String(assessment.seed) },
      { label: 'Draws', value: String(assessment.draws) },
      ...schemeFacts(context),
    ],
  };
  const values = {
    facts: { blocks: [facts] },
    input_hash: assessment.inputHash,
    files: { blocks: assessment.inputs.length === 0 ? [] : [fileTable(context)] },
  };
  return [{ values, charts: {} }];
}

/** How each system of units is called. */
const systemNames: Record<UnitSystem, string> = { metric: 'metric', us: 'US customary' };

/** How the draws were made, so that they can be made again. */
function schemeFacts({ assessment: { certainty } }: ReportContext): Fact[] {
  if (certainty === null) return [];
  return [
    { label: 'Random numbers', value: certainty.generator },
    { label: 'Inputs from the Sobol’ sequence', value: String(certainty.sobolInputs) },
  ];
}

function fileTable({ assessment }: ReportContext): TableBlock {
  const rows = assessment.inputs.map(({ name, sha256 }) => row(head(name), cell(sha256)));
  const columns = [wordColumn('File', 1), wordColumn('SHA-256', 3)];
  return { kind: 'table', title: '', columns, rows, note: [], rowHeads: true };
}
