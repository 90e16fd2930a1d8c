/** One group of a DXF file: its code and value, with the number of the line the code stands on. */
export interface Group {
  readonly code: number;
  readonly value: string;
  readonly line: number;
}

/** An entity with its groups; vertices of a polyline follow inside it. */
export interface Entity {
  readonly type: string;
  readonly layer: string;
  readonly line: number;
  readonly groups: readonly Group[];
  readonly vertices: readonly (readonly Group[])[];
}

/** The pairs of lines of a DXF text; `broken` is the line where they stop being pairs, null when they do not. */
export function readGroups(text: string): {
  readonly groups: readonly Group[];
  readonly broken: number | null;
} {
  const lines = text.split(/\r\n|\n|\r/);
  while (lines.length > 0 && lines.at(-1)?.trim() === '') lines.pop();
  const groups: Group[] = [];
  for (let i = 0; i < lines.length; i += 2) {
    const code = (lines[i] ?? '').trim();
    const value = lines[i + 1];
    if (!/^-?\d{1,4}$/.test(code) || value === undefined) return { groups, broken: i + 1 };
    groups.push({ code: Number(code), value, line: i + 1 });
  }
  return { groups, broken: null };
}

/** The entities between ENTITIES and ENDSEC. */
export function readEntities(groups: readonly Group[]): readonly Entity[] {
  const start = groups.findIndex(
    (g, i) => g.code === 2 && g.value.trim() === 'ENTITIES' && groups[i - 1]?.value.trim() === 'SECTION',
  );
  if (start < 0) return [];
  const records = splitRecords(groups.slice(start + 1));
  const entities: Entity[] = [];
  let open: { head: readonly Group[]; vertices: (readonly Group[])[] } | null = null;
  for (const record of records) {
    const type = typeOf(record);
    if (type === 'ENDSEC') break;
    if (open && type === 'VERTEX') open.vertices.push(record);
    else if (open && type === 'SEQEND') {
      entities.push(makeEntity(open.head, open.vertices));
      open = null;
    } else {
      if (open) entities.push(makeEntity(open.head, open.vertices));
      open = type === 'POLYLINE' ? { head: record, vertices: [] } : null;
      if (!open) entities.push(makeEntity(record, []));
    }
  }
  if (open) entities.push(makeEntity(open.head, open.vertices));
  return entities;
}

function splitRecords(groups: readonly Group[]): readonly (readonly Group[])[] {
  const records: Group[][] = [];
  for (const group of groups) {
    if (group.code === 0) records.push([group]);
    else records.at(-1)?.push(group);
  }
  return records;
}

const typeOf = (record: readonly Group[]) => record[0]?.value.trim() ?? '';

function makeEntity(head: readonly Group[], vertices: readonly (readonly Group[])[]): Entity {
  return {
    type: typeOf(head),
    layer: head.find((g) => g.code === 8)?.value.trim() ?? '0',
    line: head[0]?.line ?? 0,
    groups: head,
    vertices,
  };
}
