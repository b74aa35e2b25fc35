import type { Assessment, CalculationLine } from '../../assess/assessment.js';
import { displaySystems, type UnitSystem } from '../../quantity/display-units.js';
import { restater } from '../../quantity/restate.js';
import { trueMinus } from './figures.js';

/**
 * An assessment whose sentences give their figures in the units that were asked for, with true minus signs. Its
 * numbers stay in SI, and the texts of the user as they are: what a file says is shown as it says it.
 */
export function restatedAssessment(assessment: Assessment, system: UnitSystem): Assessment {
  const { study, believed, inputs, ...told } = assessment;
  const names = new Set(namesIn(study));
  const inUnits = system === 'metric' ? (text: string) => text : restater(displaySystems[system], [...names]);
  const restate = (text: string) => (names.has(text) ? text : trueMinus(inUnits(text)));
  const provenance = study.provenance.map((entry) =>
    typeof entry.value === 'number' ? { ...entry, shown: restate(entry.shown) } : entry,
  );
  return { ...restatedTree(told, restate), study: { ...study, provenance }, believed, inputs };
}

/** A working stays in SI, where its equations hold; its results are given in the other units as well. */
export function resultsAlsoIn(
  system: UnitSystem,
  study: Assessment['study'],
  lines: CalculationLine[],
): CalculationLine[] {
  if (system === 'metric') return lines;
  const restate = restater(displaySystems[system], namesIn(study));
  return lines.map((line) => {
    const [section, other] = [restate(line.section), restate(line.result)];
    return { ...line, section, result: other === line.result ? other : `${line.result} (${other})` };
  });
}

/** Everything in a study that a sentence may quote. */
function namesIn(study: Assessment['study']): string[] {
  const names: string[] = [];
  const collect = (node: unknown): void => {
    if (typeof node === 'string') names.push(node);
    else if (Array.isArray(node)) {
      if (typeof node[0] !== 'number') node.forEach(collect);
    } else if (node !== null && typeof node === 'object') {
      for (const [key, value] of Object.entries(node)) if (key !== 'provenance') collect(value);
    }
  };
  collect(study);
  return names;
}

function restatedTree<T>(tree: T, restate: (text: string) => string): T {
  if (typeof tree === 'string') return restate(tree) as T;
  if (Array.isArray(tree)) {
    return (typeof tree[0] === 'number' ? tree : tree.map((item) => restatedTree(item, restate))) as T;
  }
  if (tree === null || typeof tree !== 'object' || ArrayBuffer.isView(tree)) return tree;
  const entries = Object.entries(tree).map(([key, value]) => [key, restatedTree(value, restate)]);
  return Object.fromEntries(entries) as T;
}
