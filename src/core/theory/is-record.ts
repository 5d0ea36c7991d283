/** A value from outside with fields, of which nothing is known yet. */
export type Fields = Readonly<Record<string, unknown>>;

/** Whether a value from storage, a file or a link has fields: neither a list nor nothing. */
export const isRecord = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
