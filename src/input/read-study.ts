import * as sayFile from '../problem/file-messages.js';
import { inFileOrder } from '../problem/format-issue.js';
import type { Issue, Result } from '../problem/issue.js';
import { nearestName } from '../problem/nearest-name.js';
import { unknownReference } from '../problem/study-messages.js';
import type { Report } from '../problem/trouble.js';
import type { FieldDeclaration } from '../quantity/field.js';
import { criterionFields, measuredFields } from '../study/choosing-fields.js';
import type { FeatureKind } from '../study/feature.js';
import { studyColumns } from '../study/fields.js';
import { dayFields, showFields } from '../study/show-fields.js';
import type { Study, UnlikelyFigure } from '../study/study.js';
import { loadFields, packFields } from '../study/supply-fields.js';
import { buildStudy } from './build-study.js';
import { applyChanges, type Change, changeOf, changesFile } from './changes.js';
import { changeCriteria, isCriterionChange } from './criteria-changes.js';
import { defaultCriteria } from './criterion-scale.js';
import { cueList, type PlayRange } from './cue-list.js';
import {
  assumptionsFile,
  type FileRole,
  fileRoles,
  type InputFile,
  inReadingOrder,
  roleOf,
} from './files.js';
import { issueCollector } from './issue-collector.js';
import type { Assumptions } from './read-assumptions.js';
import { candidateColumnNames, readCandidates } from './read-candidates.js';
import { readCriteria } from './read-criteria.js';
import { checkMeasuredBaseline, readDay, readMeasured } from './read-day.js';
import { itemCells, readItems } from './read-items.js';
import { readLoads, readPacks } from './read-packs.js';
import { readCueRows } from './read-show.js';
import type { RowReading } from './row-reading.js';
import { readTable, requireColumns, type Table } from './table.js';

export type { Change } from './changes.js';
export type { InputFile, InputFile as FileContent } from './files.js';

/**
 * From the files of a study folder to the study in SI, or to every problem of every file in one run, in file order.
 *
 * @param files - the files of the folder; what is no file of a study is named and not read
 * @param assumptions - what is taken when blank
 * @param changes - values to try instead of what the files say: `feature.mass=420 g`, `worm-a.mass=300 g`,
 *   `runtime.weight=much`
 * @returns the study with the warnings met on the way, or the errors (and warnings) that prevented it
 */
export function readStudy(
  files: readonly InputFile[],
  assumptions: Assumptions,
  changes: readonly (string | Change)[] = [],
): Result<Study> {
  const collector = issueCollector();
  const { report } = collector;
  const study = read(files, assumptions, changes, report);
  const order = [assumptionsFile, ...inReadingOrder(files.map(({ name }) => name)), changesFile];
  const missing = fileRoles.map(({ file }) => file).filter((file) => !order.includes(file));
  const issues = inFileOrder([...assumptions.issues, ...collector.issues], [...order, ...missing]);
  if (study === null || issues.some(({ severity }) => severity === 'error')) return { ok: false, issues };
  const unlikely = issues.filter(({ code }) => code === 'implausible').map(unlikelyFigure);
  return { ok: true, value: { ...study(), ...(unlikely.length > 0 && { unlikely }) }, issues };
}

/** A report is read by who never saw the warnings: what they question goes with the study. */
function unlikelyFigure({ file, line, column, message }: Issue): UnlikelyFigure {
  const place = [line === null ? file : `${file}:${line}`, column].filter((part) => part !== null).join(' ');
  return { place, message };
}

/** Columns of each file, for its header. */
const columnNames: Record<FileRole, () => readonly string[]> = {
  study: () => names(studyColumns),
  candidates: candidateColumnNames,
  show: () => names(showFields('hinge')),
  packs: () => names(packFields),
  loads: () => names(loadFields),
  criteria: () => names(criterionFields),
  day: () => names(dayFields),
  measured: () => names(measuredFields),
};

const names = (fields: readonly FieldDeclaration[]): string[] => fields.map(({ name }) => name);

/** Reads everything that can be read; null when a required file is missing or no table. */
function read(
  files: readonly InputFile[],
  assumptions: Assumptions,
  typed: readonly (string | Change)[],
  report: Report,
): (() => Study) | null {
  const tables = readTables(files, report);
  const [studyTable, showTable, packsTable, loadsTable, criteriaTable, dayTable, measuredTable] = (
    ['study', 'show', 'packs', 'loads', 'criteria', 'day', 'measured'] as const
  ).map((role) => tables[role][0] ?? null);

  const complete = studyTable && requireColumns(studyTable, ['item', 'value'], report).length === 0;
  const cells = studyTable && complete ? itemCells(studyTable, report) : null;
  const changes = typed.flatMap((change) => changeOf(change, report) ?? []);
  const choosing = changes.filter(isCriterionChange);
  const entered = changes.filter((change) => !isCriterionChange(change));
  const changeable = { items: cells, candidates: tables.candidates, packs: packsTable!, loads: loadsTable! };
  const triedFigures = applyChanges(entered, changeable, report);

  const itemsReading = studyTable && cells ? readItems(studyTable, cells, assumptions, report) : null;
  const items = itemsReading?.items ?? null;
  const kind = itemsReading?.kind ?? 'hinge';
  const baselineId = items?.text('baselineId') ?? null;
  const targetRuntimeS = items?.number('targetRuntimeS') ?? null;

  const candidates = readCandidates(tables.candidates, { kind, baselineId, assumptions, report });
  const packs = packsTable ? readPacks(packsTable, assumptions, report) : null;
  const loads = loadsTable ? readLoads(loadsTable, assumptions, report) : null;
  const cueRows = showTable ? readCueRows(showTable, kind, assumptions, report) : null;
  const show = cueRows ? cueList(cueRows, playRange(kind, items), report) : null;
  const ownCriteria = criteriaTable
    ? readCriteria(criteriaTable, targetRuntimeS, assumptions, report)
    : defaultCriteria(targetRuntimeS, assumptions);
  const means = { targetRuntimeS, assumptions, report };
  const { criteria, tried: triedCriteria } = changeCriteria(ownCriteria, choosing, changesFile, means);
  const tried = [...triedFigures, ...triedCriteria].filter(({ from, to }) => from !== to);
  const day = dayTable ? readDay(dayTable, assumptions, report) : [];
  const measured = measuredTable ? readMeasured(measuredTable, assumptions, report) : null;
  if (measuredTable) checkMeasuredBaseline(measuredTable, baselineId, report);

  if (items && packs) checkReference(items, chosenPack, packs.ids, report);
  if (items && tables.candidates.length > 0) checkReference(items, baseline, candidates.ids, report);

  if (!items || !packs || !show || tables.candidates.length === 0) return null;
  return () =>
    buildStudy({
      items,
      packs: packs.entries,
      loads: loads?.entries ?? [],
      show,
      candidates: candidates.candidates,
      criteria,
      day,
      measured: measured?.measured ?? [],
      provenance: [
        ...items.provenance.values(),
        ...packHistories(packs.provenance, items.text('pack.id')!),
        ...[...(loads?.provenance.values() ?? [])].flat(),
        ...candidates.provenance,
        ...(measured?.provenance ?? []),
      ],
      tried,
    });
}

/** Where cues may go; stops in the wrong order are told where they stand, and every cue would lie beyond them. */
function playRange(kind: FeatureKind, items: RowReading | null): PlayRange {
  const lower = items?.number('feature.lowerStopPosition') ?? null;
  const upper = items?.number('feature.upperStopPosition') ?? null;
  const latch = items?.number('feature.latchPosition') ?? null;
  const isReversed = lower !== null && upper !== null && lower >= upper;
  return isReversed ? { kind, lower: null, upper: null, latch } : { kind, lower, upper, latch };
}

/** Items of study.csv that name a row of another file. */
const chosenPack = { property: 'pack.id', item: 'pack.choice', file: 'packs.csv' };
const baseline = { property: 'baselineId', item: 'baseline', file: 'candidates.csv' };

function checkReference(
  items: RowReading,
  { property, item, file }: typeof chosenPack,
  ids: readonly string[],
  report: Report,
): void {
  const id = items.text(property);
  if (id === null || ids.includes(id)) return;
  const place = items.provenance.get(property)!.place!;
  report(place, unknownReference(item, id, file, nearestName(id, ids), [...ids]));
}

/** The chosen pack stands in the study as `pack`, the others under their ids. */
function packHistories(histories: ReturnType<typeof readPacks>['provenance'], chosen: string) {
  return [...histories].flatMap(([id, history]) =>
    id === chosen
      ? history.map((entry) => ({ ...entry, path: entry.path.replace(`packs.${id}.`, 'pack.') }))
      : history,
  );
}

/** The tables by role; missing and strange files are reported. */
function readTables(files: readonly InputFile[], report: Report): Record<FileRole, Table[]> {
  const tables: Record<FileRole, Table[]> = {
    study: [],
    candidates: [],
    show: [],
    packs: [],
    loads: [],
    criteria: [],
    day: [],
    measured: [],
  };
  const known = fileRoles.map(({ file }) => file);
  const seen = new Set<string>();
  for (const name of inReadingOrder(files.map((file) => file.name))) {
    const place = { file: name, line: null, column: null };
    const role = roleOf(name);
    if (role === null) {
      report(place, sayFile.unknownFile(name, nearestName(name, known)));
    } else if (seen.has(name.toLowerCase())) {
      report(place, sayFile.sameFileTwice(name));
    } else {
      const optional = fileRoles.some((entry) => entry.role === role && !entry.required);
      const table = readTable(
        files.find((file) => file.name === name)!,
        columnNames[role](),
        report,
        optional,
      );
      if (table !== null) tables[role].push(table);
    }
    seen.add(name.toLowerCase());
  }
  const strange = files.map(({ name }) => name).filter((name) => roleOf(name) === null);
  for (const { role, file, required } of fileRoles) {
    if (!required || [...seen].some((name) => roleOf(name) === role)) continue;
    report({ file, line: null, column: null }, sayFile.missingFile(file, nearestName(file, strange)));
  }
  return tables;
}
