import {
  dictionaryAt,
  type Element,
  elements,
  entry,
  listAt,
  type OpenPdf,
  PDFArray,
  textAt,
} from './open-pdf.js';
import { marked } from './operations.js';
import { type Rule, unless } from './rule.js';

const kinds =
  'Document Part Art Sect Div BlockQuote Caption TOC TOCI P H1 H2 H3 H4 H5 H6 L LI Lbl LBody Table TR TH TD THead TBody TFoot Span Quote Figure Formula'.split(
    ' ',
  );

/** Faults of every element of a kind. */
const ofKind = (kind: string, faults: (element: Element) => string[]): Rule['faults'] => {
  return ({ structure }) =>
    elements(structure)
      .filter((element) => element.kind === kind)
      .flatMap(faults);
};

const children = ({ parts }: Element): Element[] => parts.filter((part) => 'kind' in part);

/** What somebody who cannot see the page is told. */
export const structureRules: Rule[] = [
  {
    id: 'tagged',
    clause: '19005-3, 6.7.2 and 6.7.3',
    demands: 'the file is marked as tagged and has one document element',
    faults: ({ catalog, structure }) => [
      ...unless(textAt(dictionaryAt(catalog, 'MarkInfo'), 'Marked') === 'true', 'not marked'),
      ...unless(
        structure !== null &&
          children(structure)
            .map(({ kind }) => kind)
            .join() === 'Document',
        'no document element',
      ),
    ],
  },
  {
    id: 'language',
    clause: '19005-3, 6.7.4',
    demands: 'the file names its language',
    faults: ({ catalog }) =>
      unless(/^[a-z]{2,3}(-[A-Za-z0-9]+)*$/.test(textAt(catalog, 'Lang')), 'no language'),
  },
  {
    id: 'standard-kinds',
    clause: '19005-3, 6.7.3.4',
    demands: 'elements are of the kinds that readers know',
    faults: ({ structure }) =>
      elements(structure)
        .map(({ kind }) => kind)
        .filter((kind) => !kinds.includes(kind)),
  },
  {
    id: 'content-reached',
    clause: '14289-1, 7.1',
    demands:
      'every tagged stretch of a page belongs to one element, and every element to a stretch that is there',
    faults: contentFaults,
  },
  {
    id: 'parent-tree',
    clause: '19005-3, 6.7.3',
    demands: 'from a stretch of a page its element can be found',
    faults: parentFaults,
  },
  {
    id: 'headings',
    clause: '14289-1, 7.4.2',
    demands: 'the first heading is of level 1, and going down no level is left out',
    faults: ({ structure }) => {
      const levels = elements(structure)
        .flatMap(({ kind }) => /^H([1-6])$/.exec(kind)?.[1] ?? [])
        .map(Number);
      return levels.flatMap((level, index) =>
        unless(
          level <= (levels[index - 1] ?? 0) + 1,
          `heading ${index + 1}: H${level} after H${levels[index - 1]}`,
        ),
      );
    },
  },
  {
    id: 'figures',
    clause: '14289-1, 7.3 and 19005-3, 6.7.5',
    demands: 'figures say in words what they show, and where they stand',
    faults: ofKind('Figure', ({ dictionary }) => [
      ...unless(
        textAt(dictionary, 'Alt').trim().length > 20,
        `alternative text ${textAt(dictionary, 'Alt')}`,
      ),
      ...unless(listAt(dictionaryAt(dictionary, 'A'), 'BBox').length === 4, 'no box'),
    ]),
  },
  {
    id: 'tables',
    clause: '14289-1, 7.5',
    demands: 'a table is a caption, then at most one head, then a body, of rows with equally many columns',
    faults: ofKind('Table', (table) => {
      const order = children(table)
        .map(({ kind }) => kind)
        .join(' ');
      const rows = elements(table).filter(({ kind }) => kind === 'TR');
      const widths = new Set(rows.map(columnsOf));
      return [
        ...unless(/^(Caption )?(THead )?TBody$/.test(order), `parts ${order}`),
        ...unless(widths.size === 1, `rows of ${[...widths].join(', ')} columns`),
        ...unless(
          rows.every((row) => children(row).every(({ kind }) => kind === 'TH' || kind === 'TD')),
          'odd cells',
        ),
      ];
    }),
  },
  {
    id: 'table-heads',
    clause: '14289-1, 7.5',
    demands: 'head cells say whether they head a row or a column; every table has some',
    faults: (pdf) => [
      ...ofKind('TH', ({ dictionary }) =>
        unless(
          /^(Row|Column|Both)$/.test(textAt(dictionaryAt(dictionary, 'A'), 'Scope')),
          'TH without scope',
        ),
      )(pdf),
      ...ofKind('Table', (table) =>
        unless(
          elements(table).some(({ kind }) => kind === 'TH'),
          'a table without TH',
        ),
      )(pdf),
    ],
  },
  {
    id: 'lists',
    clause: '14289-1, 7.6',
    demands: 'lists hold items, items a label and a body',
    faults: ({ structure }) =>
      elements(structure).flatMap((element) => {
        const order = children(element)
          .map(({ kind }) => kind)
          .join(' ');
        if (element.kind === 'L') return unless(/^(Caption )?LI( LI)*$/.test(order), `list of ${order}`);
        return element.kind === 'LI' ? unless(/^(Lbl )?LBody$/.test(order), `item of ${order}`) : [];
      }),
  },
  {
    id: 'outline',
    clause: '14289-1, 7.17',
    demands: 'bookmarks lead to the left edge of the page, at a height on it',
    faults: outlineFaults,
  },
];

function columnsOf(row: Element): number {
  const span = ({ dictionary }: Element) => Number(textAt(dictionaryAt(dictionary, 'A'), 'ColSpan') || 1);
  return children(row).reduce((sum, cell) => sum + span(cell), 0);
}

function contentFaults({ structure, pages }: OpenPdf): string[] {
  const told = elements(structure).flatMap(({ parts }) => parts.filter((part) => 'id' in part));
  return pages.flatMap(({ dictionary, operations }, index) => {
    const drawn = marked(operations).flatMap(({ operation: { operator, operands } }) =>
      operator === 'BDC' ? (/\/MCID (\d+)/.exec(operands[1]!)?.[1] ?? []) : [],
    );
    const owned = told.filter(({ page }) => page === dictionary).map(({ id }) => String(id));
    const sorted = (ids: string[]) => [...ids].sort().join();
    return unless(
      sorted(drawn) === sorted(owned),
      `page ${index + 1}: ${drawn.length} drawn, ${owned.length} told`,
    );
  });
}

function parentFaults({ structure, catalog, pages }: OpenPdf): string[] {
  const numbers = listAt(dictionaryAt(dictionaryAt(catalog, 'StructTreeRoot'), 'ParentTree'), 'Nums');
  const owners = new Map<string, object>();
  for (const element of elements(structure))
    for (const part of element.parts)
      if ('id' in part)
        owners.set(
          `${pages.findIndex(({ dictionary }) => dictionary === part.page)} ${part.id}`,
          element.dictionary,
        );
  return pages.flatMap(({ dictionary }, index) => {
    const key = textAt(dictionary, 'StructParents');
    const at = numbers.findIndex((number, place) => place % 2 === 0 && String(number) === key);
    const list = numbers[at + 1];
    const parents = list instanceof PDFArray ? list.asArray().map((_, place) => list.lookup(place)) : [];
    const wrong = parents.filter((parent, id) => owners.get(`${index} ${id}`) !== parent);
    const told = [...owners.keys()].filter((place) => place.startsWith(`${index} `)).length;
    return unless(
      wrong.length === 0 && told === parents.length,
      `page ${index + 1}: ${parents.length} of ${told}, ${wrong.length} wrong`,
    );
  });
}

function outlineFaults({ catalog }: OpenPdf): string[] {
  const root = dictionaryAt(catalog, 'Outlines');
  const faults: string[] = [];
  let shown = 0;
  const walk = (parent: NonNullable<typeof root>, isShown: boolean): void => {
    for (let item = dictionaryAt(parent, 'First'); item; item = dictionaryAt(item, 'Next')) {
      if (isShown) shown++;
      const [, kind, left, top] = listAt(item, 'Dest').map(String);
      const isOnPage = Number(left) === 0 && Number(top) > 0 && Number(top) < 842;
      faults.push(...unless(kind === '/XYZ' && isOnPage, `${textAt(item, 'Title')}: ${kind} ${left} ${top}`));
      walk(item, isShown && Number(textAt(item, 'Count')) > 0);
    }
  };
  if (root === undefined || entry(root, 'First') === undefined) return ['no bookmarks'];
  walk(root, true);
  return [
    ...faults,
    ...unless(Number(textAt(root, 'Count')) === shown, `count ${textAt(root, 'Count')} of ${shown}`),
  ];
}
