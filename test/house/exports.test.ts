import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { importedNames, parsed } from './imports.js';
import { sources, textOf } from './project.js';

/** What no other source imports and stays exported all the same, for its tests or beside its like; by file. */
const unimported: Record<string, string[]> = {
  'src/app/records-suspects.ts': ['misfit'],
  'src/archive/manifest.ts': ['isInside'],
  'src/assess/protection.ts': ['believedRatingPerH'],
  'src/drives/columns.ts': ['sheetColumns'],
  'src/assess/break-even.ts': ['valueModel'],
  'src/assess/calibration/agreement.ts': ['sigmaOf'],
  'src/assess/calibration/calibrate.ts': ['calibrateWith'],
  'src/assess/cautions/standing.ts': ['approvalLine'],
  'src/assess/choosing/weight-change.ts': ['nearestLevelWeights'],
  'src/assess/lesser-changes/mass-shaved.ts': ['shavedMassKg', 'without'],
  'src/assess/lesser-changes/second-pack.ts': ['doubled', 'prospectiveCurrentsA'],
  'src/assess/lesser-changes/slower-moves.ts': ['slowed'],
  'src/assess/limits.ts': ['marginOf'],
  'src/cli/helper-threads.ts': ['threadCount'],
  'src/cli/program.ts': ['programFor'],
  'src/cli/terminal.ts': ['wantsColour'],
  'src/input/assumptions-template.ts': ['assumptionsTemplate'],
  'src/physics/cell-tables.ts': ['cellChemistryIds'],
  'src/physics/constants.ts': ['zeroCelsiusK'],
  'src/physics/gear-train.ts': ['lossRatio'],
  'src/physics/motion-law.ts': ['motionLaws'],
  'src/physics/power-screw.ts': ['raiseTorqueNm', 'lowerTorqueNm'],
  'src/physics/pulse-drive.ts': ['pulseBusCurrentRatio'],
  'src/physics/thermal.ts': ['settledWindingRiseK'],
  'src/problem/nearest-name.ts': ['editDistance'],
  'src/quantity/display-units.ts': ['usDisplay'],
  'src/quantity/unit-table.ts': ['units'],
  'src/render/pdf/blocks/column-widths.ts': ['distribute'],
  'src/report/tables/fit-table.ts': ['bestTurn', 'tightest'],
  'src/simulate/candidate.ts': ['listingOf'],
  'src/simulate/heat-load.ts': ['copperHeatW'],
  'src/simulate/loop-figures.ts': ['worstWindowMean'],
  'src/simulate/mechanics.ts': ['bounceFractions'],
  'src/simulate/sampling/chi-square.ts': ['chiSquareShare'],
  'src/simulate/sampling/draw-plan.ts': ['relativeWidthRatio'],
  'src/simulate/sampling/resample.ts': ['effectiveDrawCount'],
  'src/simulate/sampling/sobol.ts': ['sobolWord'],
  'src/sources/sources.ts': ['sources'],
};

/** Values that a source exports. Types stay exported beside what they describe, where the test of endings sees them. */
function exportsOf(path: string): string[] {
  return parsed(path).statements.flatMap((statement) => {
    const exported =
      ts.canHaveModifiers(statement) &&
      ts.getModifiers(statement)?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword);
    if (!exported) return [];
    if (ts.isVariableStatement(statement))
      return statement.declarationList.declarations.map(({ name }) => name.getText());
    return ts.isFunctionDeclaration(statement) || ts.isClassDeclaration(statement)
      ? [statement.name?.getText() ?? '']
      : [];
  });
}

describe('exports', () => {
  const imported = importedNames(sources());
  const idle = sources().flatMap((path) => {
    const used = imported.get(path) ?? new Set();
    return used.has('*')
      ? []
      : exportsOf(path)
          .filter((name) => !used.has(name))
          .map((name) => `${path} ${name}`);
  });
  const listed = Object.entries(unimported).flatMap(([path, names]) =>
    names.map((name) => `${path} ${name}`),
  );

  it('are imported by another source, or are on the list of what stays exported', () => {
    expect(idle.filter((name) => !listed.includes(name))).toEqual([]);
  });

  it('are on that list only while it is so', () => {
    expect(listed.filter((name) => !idle.includes(name))).toEqual([]);
  });
});

it('gravity and the zero of the Celsius scale are written as figures once', () => {
  const files = sources().filter((path) => /\b(9\.80665|273\.15)\b/.test(textOf(path)));
  expect(files).toEqual(['src/quantity/exact.ts']);
});
