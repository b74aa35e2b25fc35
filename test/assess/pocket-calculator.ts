/** Units as the working writes them, in SI. Longer names first. */
const units: [name: string, factor: number][] = [
  ['V·s/rad', 1],
  ['V·s/m', 1],
  ['rad/s', 1],
  ['rad/m', 1],
  ['mm/s', 1e-3],
  ['m/s²', 1],
  ['kg·m', 1],
  ['N·m', 1],
  ['mAh', 3.6],
  ['Ah', 3600],
  ['min', 60],
  ['deg', Math.PI / 180],
  ['EUR', 1],
  ['mA', 1e-3],
  ['mΩ', 1e-3],
  ['mm', 1e-3],
  ['dB', 1],
  ['mW', 1e-3],
  ['kg', 1],
  ['Hz', 1],
  ['°', Math.PI / 180],
  ['A', 1],
  ['V', 1],
  ['Ω', 1],
  ['N', 1],
  ['W', 1],
  ['J', 1],
  ['g', 1e-3],
  ['m', 1],
  ['s', 1],
  ['h', 3600],
];

/**
 * What a reader gets who types the numbers of a line into a pocket calculator, in SI.
 * @returns null when the text is words and no sum
 */
export function calculated(numbers: string): number | null {
  const [sum] =
    numbers.split(', ').length > 1 && !numbers.startsWith('max(') ? numbers.split(', ') : [numbers];
  const quantity = new RegExp(
    `(-?\\d+(?:\\.\\d+)?) ?(${units.map(([name]) => name).join('|')})(?![\\p{L}·/])`,
    'gu',
  );
  const plain = (sum ?? '')
    .replace(quantity, (_, value, unit) => `(${Number(value) * units.find(([name]) => name === unit)![1]})`)
    .replace(/(sin|cos) \(/g, 'Math.$1(')
    .replace(/cos\(/g, 'Math.cos(')
    .replace(/log10\(/g, 'Math.log10(')
    .replace(/e\^\(−([\d.]+) · ([\d.]+)\)/g, 'Math.exp(-$1 * $2)')
    .replace(/e\^\(−([\d.]+)\)/g, 'Math.exp(-$1)')
    .replace(/Math\.Math\./g, 'Math.')
    .replace(/max\(/g, 'Math.max(')
    .replaceAll('²', '^2')
    .replaceAll('·', '*')
    .replaceAll('−', '-')
    .replaceAll('[', '(')
    .replaceAll(']', ')')
    .replace(/\((-)(\d+(?:\.\d+)?)\/(\d+)\)/g, '(0-$2/$3)')
    .replaceAll('^', '**');
  if (/[^\d\s.+\-*/(),eMathsincomxplg]/.test(plain)) return null;
  try {
    const value = new Function(`return ${plain}`)();
    return typeof value === 'number' && Number.isFinite(value) ? value : null;
  } catch {
    return null;
  }
}
