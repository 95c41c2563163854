import type { FlowTestHistory, HistoryEntry, RepairComparison } from '../hydraulics/flowTestHistory.ts';
import { flowTestSettingsFrom, type FlowTestSettings } from '../hydraulics/flowTestSettings.ts';
import { recordedHistory } from '../hydraulics/recordedHistory.ts';
import type { PacketContent } from './schema.ts';
import { recordedTestOf } from './testOf.ts';
import type { PacketTest } from './testSchema.ts';

/** What the tests of a packet say, computed from the packet's own content. */
export interface TestResults {
  readonly settings: FlowTestSettings;
  /** Of the struck hydrant, before the strike and after; empty when nobody knows which hydrant it was. */
  readonly history: FlowTestHistory;
  readonly repair: RepairComparison | null;
  /** Of any test in the packet, also of another hydrant. */
  readonly entryOf: (test: PacketTest) => HistoryEntry | null;
}

export function testResults({
  flowTests,
  earlierTests,
  flowTestRules,
  hydrant,
  strike,
}: Pick<PacketContent, 'flowTests' | 'earlierTests' | 'flowTestRules' | 'hydrant' | 'strike'>): TestResults {
  const settings = flowTestSettingsFrom(flowTestRules);
  const all = [...earlierTests, ...flowTests];
  const own = all.filter(({ residualHydrantId }) => residualHydrantId === hydrant.hydrantId);
  const history = recordedHistory(
    own.map(recordedTestOf),
    [{ strikeId: '', struckAt: strike.since, repairedAt: strike.repairedAt }],
    settings,
  );
  const others = all
    .filter((test) => !own.includes(test))
    .flatMap((test) => recordedHistory([recordedTestOf(test)], [], settings).entries);
  const entries = new Map([...history.entries, ...others].map((entry) => [entry.testId, entry]));
  return {
    settings,
    history,
    repair: history.repairs[0] ?? null,
    entryOf: ({ submissionId }) => entries.get(submissionId) ?? null,
  };
}
