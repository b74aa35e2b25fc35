import type { StudyRequest } from '../app/study.js';
import type { OwnTemplates } from '../app/templates/own-templates.js';

/** What a command hands to the app: files as read, templates, and where to report progress. */
export interface Reading extends StudyRequest {
  templates: Record<string, string>;
  /** Pictures of the user's own letterhead. */
  images: OwnTemplates['images'];
  units: 'metric' | 'us';
}
