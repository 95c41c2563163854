/** English words: a packet's photos and papers, its archive and revisions, and the job that makes it. */
export const exhibits = {
  'packet.manifest.content': 'Everything this packet says, as data',
  'packet.photo.original-hash': 'Original: SHA-256 {sha256}',
  'packet.photo.display-hash': 'Copy shown here ({width} × {height} pixels): SHA-256 {sha256}',
  'packet.photo.place': 'Camera’s position: {latitude}, {longitude} (WGS 84).',

  'packet.photo.place-from':
    'Camera’s position: {latitude}, {longitude} (WGS 84), {distance} from the hydrant.',
  'packet.photo.captured-both': 'Captured {at} (source: camera, {camera}).',
  'packet.photo.captured-camera': 'Captured {at} (source: camera, as it wrote it into the file).',
  'packet.photo.captured-declared':
    'Captured {at} (source: whoever handed it in; the file holds no time of its camera).',
  'packet.photo.captured-person': 'Captured {at} (source: whoever handed it in); by the camera {camera}.',
  'packet.photo.recorded-arrived': 'Hash recorded {recorded}, bytes arrived {arrived}.',
  'packet.photo.times-differ': 'These two differ by {apart}.',
  'packet.photo.minutes': '{minutes, plural, one {# minute} other {# minutes}}',
  'packet.photo.hours': '{hours} h',
  'packet.photo.taken-after':
    'The time of capture is later than the server had it, so the clock that gave it was wrong.',
  'packet.photo.arrived-before': 'The same file had arrived before this record named it.',

  'packet.warning.residual-below-rating':
    'The residual fell to {residualPsi}, below {ratingResidualPsi}. The capacity is worked out back to {ratingResidualPsi} from this reading, and is less than what flowed.',
  'packet.warning.static-below-rating':
    'The static pressure, {staticPsi}, is not above {ratingResidualPsi}, so no flow is available at that residual.',
  'packet.warning.static-weak':
    'The static pressure, {staticPsi}, is below {weakStaticPsi}: a weak system. The capacity given here is at {ratingResidualPsi}; a rule that rates at half the static ({halfStaticPsi}) would give another.',
  'packet.warning.rated-at-half-static':
    'The static pressure, {staticPsi}, is below {weakStaticPsi}, so the capacity is given at half of it, {ratingResidualPsi}, and does not compare with one at another residual.',
  'packet.warning.capacity-uncertain':
    'By these readings the capacity may be anywhere from {lowGpm} to {highGpm}; the single figure stands for that range.',
  'packet.warning.flowed-at-residual-hydrant':
    'Hydrant {hydrantId} flowed while its own pressure was read, so the drop holds the losses of its barrel and lateral too. The capacity is then of the hydrant, and lower than that of the main.',
  'packet.warning.gauge-out-of-calibration':
    'Gauge {gaugeId} was last calibrated on {calibratedOn}, {days} days before this test; the utility allows {mostDays}. The readings are taken as they were, and the figure is as sure as that gauge.',
  'packet.warning.gauge-calibration-unknown':
    'It is not recorded when gauge {gaugeId} was calibrated. The readings are taken as they were, and the figure is as sure as that gauge.',
  'packet.warning.gauge-calibrated-after-test':
    'Gauge {gaugeId} is recorded as calibrated on {calibratedOn}, after the test of {testedOn}. That date does not bear on this test, and the figure is as sure as that gauge.',
  'packet.warning.reading-above-gauge':
    'Gauge {gaugeId} ends at {rangePsi} and is recorded as reading {readPsi}. One of the two is wrong, and the figure rests on the reading.',
  'packet.warning.static-jumped':
    'The static pressure is {changePsi} {direction, select, up {higher} other {lower}} than at the test before ({previousStaticPsi} on {testedOn}). The two tests were of the system in different states, and a difference between their figures is not the hydrant’s alone.',
  'packet.warning.flow-above-last-test':
    'The flow comes to {measuredFlowGpm}; by the test before ({testedOn}) no more than {mostFlowGpm} could flow with no pressure left. One of the two tests does not describe the main as it is now.',
  'packet.warning.class-not-at-target':
    'The class is by the flow at {ratingResidualPsi}, not by the flow at {targetResidualPsi} that is also given.',
  'packet.warning.flow-implausible':
    'The flow comes to {measuredFlowGpm}, more than {mostFlowGpm}, which few hydrants give. The figure rests on the recorded diameters and pitot readings.',
  'packet.warning.pitot-too-low':
    'Outlet {outlet}: the pitot read {pitotPsi}, below {minimumPsi}, where a needle is hard to read. The flow of this outlet is less sure for it.',
  'packet.warning.pitot-too-high':
    'Outlet {outlet}: the pitot read {pitotPsi}, above {maximumPsi}, the usual range. The flow of this outlet is less sure for it.',
  'packet.warning.pitot-above-static':
    'Outlet {outlet}: the pitot read {pitotPsi}, more than the static pressure, {staticPsi}. That can be where the flow hydrant stands well below the other; else one of the two readings is wrong.',
  'packet.warning.pumper-pitot-below-table':
    'Outlet {outlet}: there is no factor for a pumper outlet below {tablePsi}, and the pitot read {pitotPsi}; the factor for {tablePsi} is used. The flow of this outlet is less sure for it.',
  'packet.warning.outlet-may-be-pumper':
    'Outlet {outlet} is {diameterIn} wide and computed as a hose outlet. If it is a pumper outlet, its flow is up to a sixth too high here.',
  'packet.warning.coefficient-unusual':
    'Outlet {outlet}: a coefficient of {coefficient} is unusual (0.90 rounded, 0.80 square, 0.70 reaching into the barrel). The flow of this outlet is in proportion to it.',
  'packet.warning.drop-too-small':
    'The pressure fell by only {dropPsi} ({dropPercent}% of static). At least {neededPsi} ({neededPercent}%) is needed to rate a hydrant, so no capacity is given: the flow that was measured was there, and what more it could give is not known.',

  'packet.papers.title': 'Papers',
  'packet.papers.how':
    'Police report, invoices and other papers, each page as it was handed in, scaled to this paper. Links, scripts, forms’ fields and attachments in them are not carried over; the originals are in the archive.',
  'packet.papers.list': 'Papers in this packet',
  'packet.papers.not-included': 'Listed and not included',
  'packet.papers.pages': '{pages, plural, one {# page} other {# pages}}',
  'packet.papers.exhibit': 'Exhibit',
  'packet.papers.what': 'Paper',
  'packet.papers.recorded': 'Recorded',
  'packet.papers.here': 'Here',
  'packet.papers.page': '{exhibitId}, {title}: page {page} of {pages}',
  'packet.papers.page-alt': 'Page {page} of {pages} of {title}',
  'packet.paper.title': '{what}: {title}{hasNumber, select, yes {, no. {number}} other {}}',
  'packet.paper.awaited': 'Awaited: the file had not arrived when this packet was made.',
  'packet.paper.unsupported-type':
    'Not included: files of type {mediaType} cannot be placed here. The original is in the archive.',
  'packet.paper.corrupt': 'Not included: the file is damaged or cut short. The original is in the archive.',
  'packet.paper.hash-differs': 'Not included: the stored bytes do not have the recorded hash.',
  'packet.paper.too-large':
    'Not included: the file is too large to place here. The original is in the archive.',
  'packet.paper.too-many':
    'Not included: this packet already holds as many pages as it may. The original is in the archive.',
  'packet.paper.too-many-pages':
    'Not included: the file has more than 200 pages. The original is in the archive.',
  'packet.paper.password':
    'Not included: the file is protected with a password. The original is in the archive.',
  'packet.paper.no-pages': 'Not included: the file has no pages. The original is in the archive.',

  'packet.papers.arrived': 'Arrived {at}',
  'packet.manifest.wording': 'The words of this packet, as it was issued',
  'packet.manifest.hash': 'SHA-256 of the original',
  'packet.manifest.pages': 'Pages',
  'packet.state.pages': 'Shown',
  'packet.check.site':
    'This file can be checked at {address}, where one drops it and nothing is uploaded, or with the same program’s command “npm run -s verify -- packet.pdf”. “Consistent” means that every figure and hash in it follows from the records and rates that it carries; “issued by” means that its signature is the utility’s, so nobody has changed it since.',
  'packet.check.letter':
    'Anybody can check this file at {address}; its list of records says what the answers mean.',
  'packet.check.command':
    'This file can be checked with the utility’s program: “npm run -s verify -- packet.pdf”. “Consistent” means that every figure and hash in it follows from the records and rates that it carries; “issued by” means that its signature is the utility’s, so nobody has changed it since.',

  'packet.changes.title': 'What changed since revision {revision}',
  'packet.changes.added':
    '{count, plural, =0 {No record was added since revision {revision}.} one {One record was added since revision {revision}:} other {# records were added since revision {revision}:}}',
  'packet.changes.record': '{kind}, recorded {at}',

  'packet.summary.title': 'Summary',
  'packet.summary.hydrant': 'Hydrant',
  'packet.summary.struck': 'Struck',
  'packet.summary.since': 'Out of service from',
  'packet.summary.returned': 'Back in service',
  'packet.summary.out': 'Out of service for',
  'packet.summary.out-hours': '{hours} h',
  'packet.summary.total': 'Statement of costs',
  'packet.summary.demand': 'This claim demands',
  'packet.summary.pay-to': 'Pay to',
  'packet.summary.tax-form': 'Tax form',
  'packet.summary.holds': 'This packet holds',
  'packet.summary.counts':
    '{records, plural, one {# record} other {# records}}; {photos, plural, one {# photograph} other {# photographs}}, {shown} of them shown; {papers, plural, one {# paper} other {# papers}}, {merged} of them included',
  'packet.map.title': 'Where it stands',
  'packet.map.alt':
    'Sketch map: the struck hydrant in the middle, {count, plural, =0 {no other hydrant near} one {one other hydrant near} other {# other hydrants near}}. North is up.',
  'packet.map.north': 'N',
  'packet.map.note':
    'Drawn from the utility’s inventory of hydrants, without streets. The struck hydrant is the ringed one; north is up. Numbers are those of the inventory.',

  'packet.time.worked': 'worked {worked} h',
  'packet.time.class': '{time}, × {multiplier}',

  'packet.archive.read-me':
    'Companion archive of claim packet {claimNumber}, revision {revision}. Every file with its SHA-256 in hexadecimal.',
  'packet.archive.not-here': 'Not in this archive:',
  'packet.archive.times': 'When each hash was recorded and when the bytes arrived (UTC):',
  'packet.archive.time': 'recorded {recorded}, arrived {arrived}',
  'packet.archive.awaited': 'had not arrived',
  'packet.archive.hash-differs': 'the stored bytes do not have the recorded hash',
  'packet.archive.too-large': 'too large for this archive',

  'problem.changes-needed':
    'Say what changed since revision {revision} and why: it stands right after the letter of the new revision.',
  'problem.packet-job-unknown': 'There is no such job for this claim. Start again.',
  'packet.job.queued': 'Waiting to begin',
  'packet.job.load': 'Reading the records',
  'packet.job.photos': 'Preparing photographs',
  'packet.job.papers': 'Reading papers',
  'packet.job.pages': 'Drawing pages',
  'packet.job.archive': 'Packing the originals',
  'packet.job.sign': 'Signing',
  'packet.job.done': 'Done',
  'packet.job.failed': 'It failed',

  'claim.building-packet': 'Building the packet…',
  'claim.progress': '{done} of {total}',
  'claim.changes': 'What changed since revision {revision}, and why',
  'claim.changes-hint': 'Stands right after the letter of the next revision. The preview does not need it.',
  'claim.download-archive': 'Download the originals (zip)',
  'claim.download-signature': 'Download the signature',
  'claim.in-the-way': 'Before it can be issued:',

  'before-issuing.title': 'What this packet would go out with',
  'before-issuing.objections':
    '{count, plural, =0 {No objection with money is open.} one {One objection with money is open, {most} at stake.} other {# objections with money are open, the largest {most}.}}',
  'before-issuing.objections-unread': 'The objections could not be read.',
  'before-issuing.see-objections': 'See the objections',
  'before-issuing.accepted':
    '{count, plural, one {One accepted objection is still billed:} other {# accepted objections are still billed:}}',
  'before-issuing.evidence':
    '{count, plural, =0 {Everything that its payer asks for is there.} other {Missing of what its payer asks for: {list}.}}',
  'before-issuing.evidence-unread': 'What its payer asks for could not be read.',
  'before-issuing.files':
    '{count, plural, =0 {Every file is included.} one {One file will be listed and not included:} other {# files will be listed and not included:}}',
  'before-issuing.files-unread': 'Files that cannot be included: a preview says which and why.',
  'claim.frozen-before': 'Nothing has changed since revision {revision}: it stays the one that is issued.',
} as const;
