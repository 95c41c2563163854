import type { PacketContent } from '../../packet/schema.ts';
import { correctionKind } from '../../submissions/kinds.ts';
import { finding, type Finding } from '../finding.ts';

const time = (instant: string): number => Date.parse(instant);

/** The timeline in order, the strike's own times among its events, and nothing that stands on no record. */
export function storyFindings(content: PacketContent): Finding[] {
  return [
    ...orderFindings(content),
    ...strikeFindings(content),
    ...recordFindings(content),
    ...correctionFindings(content),
  ];
}

function orderFindings({ timeline }: PacketContent): Finding[] {
  return timeline.flatMap((event, index) => {
    const before = timeline[index - 1];
    return before && time(before.at) > time(event.at)
      ? [
          finding('timeline-order', `timeline.${index}.at`, {
            number: index + 1,
            at: event.at,
            before: before.at,
          }),
        ]
      : [];
  });
}

/** The account and the timeline are of the same facts, so each of these times stands in both. */
function strikeFindings({ strike, timeline }: PacketContent): Finding[] {
  const has = (code: string, at: string): boolean =>
    timeline.some((event) => event.code === code && time(event.at) === time(at));
  const told = [
    ['struckAt', 'struck', strike.struckAt],
    ['repairedAt', 'completed', strike.repairedAt],
    ['returnedAt', 'returned', strike.returnedAt],
  ] as const;
  return [
    ...told.flatMap(([field, code, at]) =>
      at === null || has(code, at) ? [] : [finding('not-in-timeline', `strike.${field}`, { field, at })],
    ),
    ...strike.steps.flatMap(({ doneAt }, index) =>
      has('step-done', doneAt)
        ? []
        : [finding('not-in-timeline', `strike.steps.${index}.doneAt`, { field: 'steps', at: doneAt })],
    ),
    ...(strike.returnedAt !== null && time(strike.returnedAt) < time(strike.since)
      ? [
          finding('returned-before-struck', 'strike.returnedAt', {
            at: strike.returnedAt,
            since: strike.since,
          }),
        ]
      : []),
  ];
}

/** Everything that names a submission names one of the manifest. */
function recordFindings(content: PacketContent): Finding[] {
  const { statement, timeline, flowTests, earlierTests, waterLost, hydrant, photos, papers, basis } = content;
  const known = new Set(content.manifest.submissions.map(({ submissionId }) => submissionId));
  const named: [string, string][] = [
    ...statement.lines.flatMap(({ submissionIds }, index) =>
      submissionIds.map((id): [string, string] => [`statement.lines.${index}.submissionIds`, id]),
    ),
    ...timeline.map(({ submissionId }, index): [string, string] => [`timeline.${index}`, submissionId]),
    ...flowTests.map(({ submissionId }, index): [string, string] => [`flowTests.${index}`, submissionId]),
    ...earlierTests.map(({ submissionId }, index): [string, string] => [
      `earlierTests.${index}`,
      submissionId,
    ]),
    ...photos.map(({ submissionId }, index): [string, string] => [`photos.${index}`, submissionId]),
    ...papers.map(({ submissionId }, index): [string, string] => [`papers.${index}`, submissionId]),
    ...basis.work.records.map(({ submissionId }, index): [string, string] => [
      `basis.work.records.${index}`,
      submissionId,
    ]),
    ...content.strike.breaches.flatMap(({ corrected }, index): [string, string][] =>
      corrected ? [[`strike.breaches.${index}.corrected`, corrected.submissionId]] : [],
    ),
    ...(waterLost ? [['waterLost', waterLost.submissionId] as [string, string]] : []),
    ...(hydrant.lastInspection
      ? [['hydrant.lastInspection', hydrant.lastInspection.submissionId] as [string, string]]
      : []),
    ...(hydrant.lastFlowTest
      ? [['hydrant.lastFlowTest', hydrant.lastFlowTest.submissionId] as [string, string]]
      : []),
  ];
  return named.flatMap(([path, submissionId]) =>
    known.has(submissionId) ? [] : [finding('not-in-manifest', path, { path, submissionId })],
  );
}

/** A breach that is told as corrected stands on a correction, recorded when the account says. */
function correctionFindings({ strike, manifest }: PacketContent): Finding[] {
  const byId = new Map(manifest.submissions.map((item) => [item.submissionId, item]));
  return strike.breaches.flatMap(({ corrected }, index) => {
    const listed = corrected && byId.get(corrected.submissionId);
    return !listed || (listed.kind === correctionKind && time(listed.recordedAt) === time(corrected.at))
      ? []
      : [
          finding('not-that-correction', `strike.breaches.${index}.corrected`, {
            submissionId: corrected.submissionId,
            at: corrected.at,
            kind: listed.kind,
            recordedAt: listed.recordedAt,
          }),
        ];
  });
}
