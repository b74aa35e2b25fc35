import type { Choice } from '../assess/choosing/rank-again.js';
import type { Threads } from '../assess/threads.js';
import type { InputFile } from '../input/files.js';
import type { FormatName } from '../render/index.js';
import type { Templates } from '../report/index.js';

/** What a run starts from: the study's files, the templates, and what the user wants to try instead. */
export interface StudyRequest {
  files: InputFile[];
  templates: Templates;
  /** `item=value` pairs that replace what the files say. */
  changes: string[];
  /** Version of the program. */
  version: string;
  /** Told as each step begins. */
  progress(step: string): void;
  /** Others that compute draws meanwhile. */
  threads?: Threads;
  /** Given all that the ranking was made from, for a page that ranks again. */
  keepChoice?(choice: Choice): void;
}

/** Formats in which a collaborator reads a report. */
export type ReportFormat = Extract<FormatName, 'pdf' | 'html'>;

/** How a report is set. */
export interface ReportSetting {
  page: 'A4' | 'Letter';
  /** Formats to write beside the results; the PDF when not said. */
  formats?: readonly ReportFormat[];
  /** Lets the reader of the HTML page set other weights and drop limits. */
  choice?: Choice;
  /** ISO date-time that the report carries. */
  date: string;
}
