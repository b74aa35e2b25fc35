import { expect, it } from 'vitest';
import { wrapped } from '../../src/app/wrap.js';

it.each([
  ['a text that fits stays on its line', 'one two', 7, '', ['one two']],
  ['a longer one breaks at a space', 'one two', 6, '', ['one', 'two']],
  ['indents count', 'one two', 8, '  ', ['  one', '  two']],
  ['a word that is too long stands alone', 'a extraordinary b', 5, '', ['a', 'extraordinary', 'b']],
  ['a figure and its unit stay together', 'torque margin in 86 %).', 19, '', ['torque margin in', '86 %).']],
  ['and a figure and a word do not', 'runs 12 times', 7, '', ['runs 12', 'times']],
  ['nothing is one empty line', '', 10, '', ['']],
])('%s', (_, text, width, indent, lines) => {
  expect(wrapped(text, width, indent)).toEqual(lines);
});

it('further lines may be indented otherwise', () => {
  expect(wrapped('1. one two three', 9, '', '   ')).toEqual(['1. one', '   two', '   three']);
});
