import { type Citation, cite, type SourceId, sources } from '#knowledge/sources.ts';

/** A knowledge file as it is printed has been checked where it is loaded; here its parts are only told apart. */
export type Raw = Readonly<Record<string, unknown>>;

export const isRecord = (node: unknown): node is Raw =>
  typeof node === 'object' && node !== null && !Array.isArray(node);

const isSourceId = (id: unknown): id is SourceId => typeof id === 'string' && Object.hasOwn(sources, id);

/** Whether an object says where it comes from. */
export const isSource = (node: unknown): node is Raw => isRecord(node) && isSourceId(node['source']);

/** Where an object comes from. */
export function citedBy(node: Raw): Citation | undefined {
  const { source, where, verified } = node;
  if (!isSourceId(source)) return undefined;
  return cite({ source, where: typeof where === 'string' ? where : undefined, verified: verified === true });
}

/** The text under a key; none where there is none. */
export const textAt = (node: Raw, key: string): string | undefined => {
  const value = node[key];
  return typeof value === 'string' ? value : undefined;
};

/** The texts under a key; none where there are none. */
export const textsAt = (node: Raw, key: string): readonly string[] => {
  const value = node[key];
  return Array.isArray(value) ? value.filter((each): each is string => typeof each === 'string') : [];
};

/** Every source named somewhere inside, each once, the outermost first. */
export function citationsIn(node: unknown): readonly Citation[] {
  const found = new Map<string, Citation>();
  const look = (part: unknown): void => {
    if (Array.isArray(part)) part.forEach(look);
    if (!isRecord(part)) return;
    const citation = citedBy(part);
    if (citation) found.set(`${citation.source} ${citation.where ?? ''}`, citation);
    Object.values(part).forEach(look);
  };
  look(node);
  return [...found.values()];
}
