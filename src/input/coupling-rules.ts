import type { CouplingKind, Motion } from '../drives/sheet.js';
import * as say from '../problem/drive-messages.js';
import { partWithoutWhole } from '../problem/study-messages.js';
import type { FeatureKind } from '../study/feature.js';
import type { SheetContext } from './sheet-context.js';

/** Couplings that can join a drive to a feature, the usual one first. */
const possible: Record<FeatureKind, Record<Motion, readonly CouplingKind[]>> = {
  hinge: { rotary: ['direct', 'geared'], linear: ['strut'] },
  slide: { rotary: ['spool'], linear: ['direct', 'geared'] },
};

/** Columns that a coupling needs, and those that only it uses. */
const own: Record<CouplingKind, { needs: readonly string[]; uses: readonly string[] }> = {
  direct: { needs: [], uses: [] },
  geared: { needs: ['coupling_ratio'], uses: ['coupling_ratio', 'coupling_efficiency'] },
  spool: { needs: ['spool_radius'], uses: ['spool_radius', 'coupling_efficiency'] },
  strut: { needs: [], uses: ['strut_frame_arm', 'strut_feature_arm', 'strut_level_angle'] },
};

/** Efficiency of a joint in which nothing slides under load. */
const lossless = 1;

/** Takes the usual coupling when blank, and checks that it can be and is complete. */
export function applyCouplingRules(context: SheetContext, motion: Motion): void {
  const { reading, columns, feature, report, assumptions } = context;
  const field = (name: string) => columns.find((column) => column.name === name);
  const couplings = possible[feature][motion];
  reading.derive(field('coupling')!, couplings[0]!, `usual for a ${motion} drive on a ${feature}`, 'assumed');
  const coupling = reading.text('coupling') as CouplingKind | null;
  if (coupling === null) return;
  if (!couplings.includes(coupling)) {
    report(reading.at('coupling'), say.couplingImpossible(coupling, motion, feature, couplings));
    return;
  }
  for (const name of own[coupling].needs) {
    const needed = field(name)!;
    if (reading.isBlank(needed.property))
      report(reading.at(name), say.neededBy(name, `coupling is ${coupling}`, needed.how));
  }
  const efficiency = assumptions.find('drive', 'any', `coupling_efficiency_${coupling}`);
  if (efficiency !== null) reading.assume(field('coupling_efficiency')!, efficiency);
  reportIdle(context, coupling);
  if (!own[coupling].uses.includes('coupling_efficiency')) reading.settle('couplingEfficiency', lossless);
  if (coupling === 'strut') checkStrut(context);
}

function reportIdle({ reading, columns, report }: SheetContext, coupling: CouplingKind): void {
  const used = own[coupling].uses;
  const all = new Set(Object.values(own).flatMap(({ uses }) => uses));
  for (const name of all) {
    const field = columns.find((column) => column.name === name);
    const history = field === undefined ? undefined : reading.provenance.get(field.property);
    if (used.includes(name) || history === undefined || history.origin !== 'given') continue;
    report(reading.at(name), say.notUsed(name, history.written!, `coupling is ${coupling}`));
  }
}

/**
 * The three figures of a strut go together; all blank, the pivots are proposed. A drive is about as long as its
 * envelope when it is drawn in.
 */
function checkStrut({ reading, columns, report }: SheetContext): void {
  const closed = columns.find(({ name }) => name === 'closed_length')!;
  const lengthM = reading.number('lengthM');
  if (lengthM !== null) reading.derive(closed, lengthM, 'length of the envelope, rod drawn in', 'assumed');
  const parts = own.strut.uses.map((name) => columns.find((column) => column.name === name)!);
  const given = parts.filter(({ property }) => !reading.isBlank(property) && !reading.failed.has(property));
  const missing = parts.filter(({ property }) => reading.isBlank(property));
  if (given.length === 0 || missing.length === 0) return;
  report(
    reading.at(given[0]!.name),
    partWithoutWhole(given[0]!.name, missing.map(({ name }) => name).join(' and ')),
  );
}
