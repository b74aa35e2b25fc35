import { checkChart } from './check-chart.js';
import { readChart } from './fill-chart.js';
import { parseTemplate } from './parse-template.js';
import { phraseNames, phrasesFile } from './phrases.js';
import { gathered, nearestOf, type Templates, templateError } from './template-error.js';

/**
 * Checks what can be known of templates before there is a study: structure of the wording, JSON and reach of the
 * charts, names of the short texts.
 *
 * @param own the user's own files; others are as they came with the program
 * @param shipped all templates as they came with the program
 * @throws TemplateError with every fault
 */
export function checkTemplates(own: Templates, shipped: Templates): void {
  gathered(
    Object.entries(own).map(([file, source]) => () => {
      if (file === phrasesFile) checkPhrases(source, shipped);
      else if (file.endsWith('.md')) parseTemplate(file, source);
      else if (file.endsWith('.json')) {
        readChart(file, source);
        checkChart(file, source);
      }
    }),
  );
}

function checkPhrases(source: string, shipped: Templates): void {
  const known = phraseNames(shipped[phrasesFile] ?? '').map(({ name }) => name);
  gathered(
    phraseNames(source).map(({ name, line }) => () => {
      if (!known.includes(name)) {
        const hint = nearestOf(name, known, (near) => `## ${near}`);
        throw templateError(phrasesFile, line, `no text of the report is called "## ${name}"${hint}`);
      }
    }),
  );
}
