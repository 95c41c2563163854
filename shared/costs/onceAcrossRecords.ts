import { groupBy } from './line.ts';

interface Record<T> {
  readonly submissionId: string;
  readonly items: readonly T[];
}

/**
 * Things that bear a paper (an issue slip, an invoice) counted once, when two records name the same paper: as often as
 * the record that names it most often. Within one record every entry counts, because a crew that lists a thing twice
 * used two. Things without a paper all count.
 */
export function onceAcrossRecords<T>(
  records: readonly Record<T>[],
  paperOf: (item: T) => string | null,
): {
  readonly items: readonly { readonly item: T; readonly submissionIds: readonly string[] }[];
  readonly twice: readonly { readonly item: T; readonly submissionIds: readonly string[] }[];
} {
  const all = records.flatMap(({ items, submissionId }) =>
    items.map((item) => ({ item, submissionId, paper: paperOf(item) })),
  );
  const plain = all
    .filter(({ paper }) => paper === null)
    .map(({ item, submissionId }) => ({ item, submissionIds: [submissionId] }));
  const twice: { item: T; submissionIds: string[] }[] = [];
  const papered = groupBy(
    all.filter(({ paper }) => paper !== null),
    ({ paper }) => paper ?? '',
  ).flatMap(([, group]) => {
    const byRecord = groupBy(group, ({ submissionId }) => submissionId);
    const submissionIds = byRecord.map(([submissionId]) => submissionId);
    // Of the records that name it most often, the one made first.
    const most = byRecord.reduce(
      (best, next) => (next[1].length > best[1].length ? next : best),
      byRecord[0] ?? ['', group],
    );
    if (byRecord.length > 1) twice.push({ item: group[0].item, submissionIds });
    return most[1].map(({ item }) => ({ item, submissionIds }));
  });
  return { items: [...plain, ...papered], twice };
}
