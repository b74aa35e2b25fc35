/** Emphasis of a stretch of text; none of it carries meaning alone. */
export type Paint = (text: string, kind: 'strong' | 'muted' | 'alert') => string;
