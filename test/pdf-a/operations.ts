/** One operator of a page with what stands before it. */
export interface Operation {
  operator: string;
  /** Tokens as written; arrays and dictionaries are kept whole. */
  operands: string[];
}

const space = '\\x00\\t\\n\\f\\r ';
const token = new RegExp(
  [
    `[${space}]+|%[^\\r\\n]*`,
    '(?<text>\\((?:\\\\[\\s\\S]|[^\\\\()]|\\((?:\\\\[\\s\\S]|[^\\\\()])*\\))*\\))',
    '(?<open><<|\\[)',
    '(?<close>>>|\\])',
    '(?<hex><[^<>]*>)',
    `(?<word>/?[^${space}()<>\\[\\]{}/%]+)`,
  ].join('|'),
  'gy',
);

/** The drawing operators of a page in their order. */
export function operationsOf(content: string): Operation[] {
  const found: Operation[] = [];
  let operands: string[] = [];
  let depth = 0;
  let position = 0;
  const take = (text: string): void => {
    if (depth === 0) operands.push(text);
    else operands.push(`${operands.pop()} ${text}`);
  };
  for (const match of content.matchAll(token)) {
    if (match.index !== position) throw new Error(`cannot read the page at ${position}`);
    position += match[0].length;
    const { text, open, close, hex, word } = match.groups!;
    if (open) {
      take(open);
      depth++;
    } else if (close) {
      depth--;
      operands.push(`${operands.pop()} ${close}`);
    } else if (text ?? hex) take((text ?? hex)!);
    else if (word && (depth > 0 || /^[/\d+.-]|^(?:true|false|null)$/.test(word))) take(word);
    else if (word) {
      found.push({ operator: word, operands });
      operands = [];
    }
  }
  if (position !== content.length) throw new Error(`cannot read the page at ${position}`);
  return found;
}

/** Operators that leave a mark on the page. */
export const painting = new Set([
  'f',
  'F',
  'f*',
  'B',
  'B*',
  'b',
  'b*',
  'S',
  's',
  'sh',
  'Do',
  'Tj',
  'TJ',
  "'",
  '"',
]);

/** Every operator of the standard, inline images left out. */
export const known = new Set(
  `b B b* B* BDC BMC BT BX c cm CS cs d d0 d1 Do DP EMC ET EX f F f* G g gs h i j J K k l m M MP n q Q re RG rg ri S s
   SC sc SCN scn sh T* Tc Td TD Tf Tj TJ TL Tm Tr Ts Tw Tz v w W W* y ' "`.split(/\s+/),
);

/** What an operation stands in: tags and artifacts, outermost first. */
export type Mark = { tag: string; id: number | null };

/** Every operation with the marks it stands in. */
export function marked(operations: Operation[]): { operation: Operation; marks: Mark[] }[] {
  const stack: Mark[] = [];
  return operations.map((operation) => {
    const marks = [...stack];
    const { operator, operands } = operation;
    if (operator === 'BMC') stack.push({ tag: operands[0]!, id: null });
    if (operator === 'BDC') stack.push({ tag: operands[0]!, id: idIn(operands[1]!) });
    if (operator === 'EMC') stack.pop();
    return { operation, marks };
  });
}

function idIn(properties: string): number | null {
  const found = /\/MCID (\d+)/.exec(properties);
  return found ? Number(found[1]) : null;
}
