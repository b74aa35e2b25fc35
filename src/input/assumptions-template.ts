import { assumptionRows } from './assumption-rows.js';
import { csvLine, csvText } from './csv-text.js';

const introduction = [
  '# Everything the tool takes when a cell is blank. Edit a value to change it for every study; the basis is printed beside it.',
  '# Values are written as in the study: number, unit, spread. Ranges a..b and a..m..b say how poorly a value is known.',
  '# Rows of the group “spread” are factors on a figure that states no spread of its own.',
];

/** The editable table of assumptions as it ships: the text of templates/assumptions.csv. */
export function assumptionsTemplate(): string {
  const rows = assumptionRows().map(({ group, name, item, value, basis }) =>
    csvLine([group, name, item, value, basis]),
  );
  return csvText([...introduction, 'group,name,item,value,basis', ...rows]);
}
