import { InvalidArgumentError } from 'commander';
import type { ReportFormat } from '../app/study.js';

/** What `--format` may say, and the formats it asks for. */
const formatChoices: Record<string, readonly ReportFormat[]> = {
  pdf: ['pdf'],
  html: ['html'],
  both: ['pdf', 'html'],
};

/** Formats of one `--format`, added to those asked for before; each once. */
export function formatsAsked(text: string, before: ReportFormat[] = []): ReportFormat[] {
  const asked = text.split(',').flatMap((word) => {
    const formats = Object.hasOwn(formatChoices, word.trim()) ? formatChoices[word.trim()] : undefined;
    if (formats) return formats;
    throw new InvalidArgumentError(
      `There is no format ${word.trim()}; choose from ${Object.keys(formatChoices).join(', ')}.`,
    );
  });
  return [...new Set([...before, ...asked])];
}
