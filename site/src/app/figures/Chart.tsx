import { stackedBarsSvg, type BarRow, type Series } from '../../../../shared/drawing/stackedBarsSvg.ts';

interface Props {
  readonly idPrefix: string;
  readonly title: string;
  readonly series: readonly Series[];
  readonly rows: readonly BarRow[];
}

/** Bars with a description that reads as a list. The table of the same figures stands below. */
export function Chart({ idPrefix, title, series, rows }: Props) {
  const description = rows.map(({ label, note }) => `${label}: ${note}`).join('. ');
  const svg = stackedBarsSvg({ idPrefix, title, description, series, rows });
  // Our own drawing from numbers and catalogue words, escaped where it is made.
  return <div class="bars" dangerouslySetInnerHTML={{ __html: svg }} />;
}
