/**
 * Which words a crew's first screens say: home, finding a hydrant, the report of a strike and what becomes of it. By
 * the beginning of their keys. A word that is not among them is asked for when it is wanted and drawn when it comes.
 */
const first = [
  // The frame, the home screen, and what waits on the device.
  'app.',
  'bearing.',
  'crew.',
  'finder.',
  'hydrant.',
  'kind.',
  'look.',
  'near-map.',
  'offline.',
  'outbox.',
  'role.',
  'scan.',
  'screen.',
  'shell.',
  'sign-in.',
  'stage.',
  'stock.link',
  'strike.',
  'strike-open.',
  'title.',
  'value.hydrantType.',
  'missing.dispatch',
  // The frame of a form.
  'caution.more',
  'caution.short.',
  'caution.title',
  'form.',
  'hydraulics.caution.',
  'hydraulics.unit.ft.',
  'hydraulics.unit.m.',
  'intro.',
  'position.',
  'procedure.sheet-',
  'return-ask.',
  // The report of a strike, and the other reports that a crew begins with.
  'evidence.device',
  'evidence.place',
  'evidence.source',
  'field.dispatch.',
  'field.markedOutOfServiceAt',
  'field.note',
  'field.outage.',
  'field.photos.',
  'field.strike.',
  'photo.',
  'section.photos',
  'section.strike.',
  'value.barrelStands.',
  'value.belowGrade.',
  'value.checkValve.',
  'value.flow.',
  'value.ground.',
  'value.hazard.',
  'value.isolationValve.',
  'value.mainValve.',
  'value.outageCause.',
  'value.reportSource.',
  'value.seen.',
  'value.soundness.',
  'value.struckAtBasis.',
  'value.view.',
] as const;

/** The words of the first screens among all words of a language; `problems` are wanted with them. */
export const firstWords = (
  all: Readonly<Record<string, string>>,
  problems: Readonly<Record<string, string>>,
): Record<string, string> => ({
  ...Object.fromEntries(Object.entries(all).filter(([key]) => first.some((start) => key.startsWith(start)))),
  ...problems,
});

export const firstBeginnings: readonly string[] = first;
