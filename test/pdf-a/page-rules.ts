import { dictionaryAt, entry, type OpenPage, PDFDict, textAt } from './open-pdf.js';
import { known, marked, painting } from './operations.js';
import { type Rule, unless } from './rule.js';

const deepest = 28;
const blendModes =
  'Normal Compatible Multiply Screen Overlay Darken Lighten ColorDodge ColorBurn HardLight SoftLight Difference Exclusion Hue Saturation Color Luminosity'.split(
    ' ',
  );
const intents = ['RelativeColorimetric', 'AbsoluteColorimetric', 'Perceptual', 'Saturation'];

/** Faults of every page, each with its number. */
const onPages = (faults: (page: OpenPage) => string[]): Rule['faults'] => {
  return ({ pages }) =>
    pages.flatMap((page, index) => faults(page).map((fault) => `page ${index + 1}: ${fault}`));
};

/** What is drawn, and with what. */
export const pageRules: Rule[] = [
  {
    id: 'operators',
    clause: '19005-3, 6.2.2',
    demands: 'pages use operators of the standard only',
    faults: onPages(({ operations }) =>
      operations.filter(({ operator }) => !known.has(operator)).map(({ operator }) => operator),
    ),
  },
  {
    id: 'nesting',
    clause: '19005-3, 6.1.13',
    demands: `states are saved at most ${deepest} deep and all restored; texts and marks begin and end in turn`,
    faults: onPages(({ operations }) => {
      const deep = (open: string[], close: string) => {
        let [now, most, least] = [0, 0, 0];
        for (const { operator } of operations) {
          if (open.includes(operator)) now++;
          if (operator === close) now--;
          [most, least] = [Math.max(most, now), Math.min(least, now)];
        }
        return { now, most, least };
      };
      const [states, texts, marks] = [deep(['q'], 'Q'), deep(['BT'], 'ET'), deep(['BMC', 'BDC'], 'EMC')];
      return [
        ...unless(states.most <= deepest, `${states.most} states deep`),
        ...unless(texts.most <= 1, 'a text in a text'),
        ...unless(
          [states, texts, marks].every(({ now, least }) => now === 0 && least === 0),
          'left open',
        ),
      ];
    }),
  },
  {
    id: 'colours',
    clause: '19005-3, 6.2.4.3',
    demands: 'colours are RGB or grey, as the output intent can tell how they look',
    faults: onPages(({ operations, dictionary }) => {
      const named = dictionaryAt(dictionaryAt(dictionary, 'Resources'), 'ColorSpace');
      return operations.flatMap(({ operator, operands }) => {
        if (['k', 'K'].includes(operator)) return ['CMYK'];
        if (!['cs', 'CS'].includes(operator)) return [];
        const space = operands[0]!.slice(1);
        const isKnown = ['DeviceRGB', 'DeviceGray', 'Pattern'].includes(space);
        return unless(isKnown || entry(named, space) !== undefined, `colour space ${space}`);
      });
    }),
  },
  {
    id: 'no-cmyk',
    clause: '19005-3, 6.2.4.3',
    demands: 'no CMYK, no spot colours, no profiles beside that of the output intent',
    faults: ({ names }) =>
      names
        .map((name) => name.decodeText())
        .filter((name) => ['DeviceCMYK', 'DeviceN', 'Separation', 'ICCBased'].includes(name)),
  },
  {
    id: 'states',
    clause: '19005-3, 6.2.5 and 6.2.10',
    demands: 'no transfer functions or halftone phases; transparency of the plain kind',
    faults: ({ dictionaries }) =>
      dictionaries
        .filter((found) => textAt(found, 'Type') === 'ExtGState')
        .flatMap((found) => [
          ...['TR', 'HTP', 'HTO'].filter((key) => entry(found, key)).map((key) => `${key} in a state`),
          ...unless(['', 'Default'].includes(textAt(found, 'TR2')), 'TR2 in a state'),
          ...unless([...blendModes, ''].includes(textAt(found, 'BM')), 'blend mode'),
          ...unless(['', 'None'].includes(textAt(found, 'SMask')), 'a soft mask'),
          ...['ca', 'CA']
            .filter(
              (key) =>
                entry(found, key) && !(Number(textAt(found, key)) >= 0 && Number(textAt(found, key)) <= 1),
            )
            .map((key) => `${key} is ${textAt(found, key)}`),
        ]),
  },
  {
    id: 'intents',
    clause: '19005-3, 6.2.6',
    demands: 'rendering intents are those of the standard',
    faults: onPages(({ operations }) =>
      operations
        .filter(({ operator, operands }) => operator === 'ri' && !intents.includes(operands[0]!.slice(1)))
        .map(({ operands }) => operands[0]!),
    ),
  },
  {
    id: 'objects',
    clause: '19005-3, 6.2.8 and 6.2.9',
    demands: 'no PostScript, no reference to other files, no pictures of pages: charts are vectors',
    faults: ({ dictionaries }) =>
      dictionaries
        .filter(
          (found) =>
            ['Image', 'PS'].includes(textAt(found, 'Subtype')) || entry(found, 'OPI') || entry(found, 'Ref'),
        )
        .map(String),
  },
  {
    id: 'tagged-or-artifact',
    clause: '14289-1, 7.1',
    demands: 'everything that leaves a mark is part of the structure or an artifact',
    faults: onPages(({ operations }) =>
      marked(operations)
        .filter(({ operation }) => painting.has(operation.operator))
        .filter(({ marks }) => !marks.some(({ tag, id }) => tag === '/Artifact' || id !== null))
        .map(({ operation }) => `${operation.operands.join(' ')} ${operation.operator} is neither`),
    ),
  },
  {
    id: 'artifacts-apart',
    clause: '14289-1, 7.1',
    demands:
      'artifacts are not inside tagged content, nor tagged content inside artifacts or other tagged content',
    faults: onPages(({ operations }) =>
      marked(operations)
        .filter(({ operation: { operator } }) => operator === 'BDC' || operator === 'BMC')
        .filter(
          ({ operation: { operands } }) =>
            /^\/Artifact$/.test(operands[0]!) || /\/MCID/.test(operands[1] ?? ''),
        )
        .filter(({ marks }) => marks.some(({ tag, id }) => tag === '/Artifact' || id !== null))
        .map(({ operation, marks }) => `${operation.operands[0]} in ${marks.at(-1)!.tag}`),
    ),
  },
  {
    id: 'tab-order',
    clause: '14289-1, 7.18.3',
    demands: 'pages are walked through in the order of the structure',
    faults: onPages(({ dictionary }) => [
      ...unless(textAt(dictionary, 'Tabs') === 'S', 'Tabs is not S'),
      ...unless(entry(dictionary, 'StructParents') !== undefined, 'no StructParents'),
    ]),
  },
  {
    id: 'page-resources',
    clause: '19005-3, 6.2.2',
    demands: 'every font, state and shading that a page names is in its resources',
    faults: onPages(({ dictionary, operations }) => {
      const resources = dictionaryAt(dictionary, 'Resources');
      const kinds: Record<string, string> = { Tf: 'Font', gs: 'ExtGState', sh: 'Shading', Do: 'XObject' };
      return operations.flatMap(({ operator, operands }) => {
        const kind = kinds[operator];
        const name = operands[0]?.slice(1) ?? '';
        return kind === undefined
          ? []
          : unless(entry(dictionaryAt(resources, kind), name) instanceof PDFDict, `${kind} ${name}`);
      });
    }),
  },
];
