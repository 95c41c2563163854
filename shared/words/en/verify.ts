/** English words: verifying a packet from its own file. */
export const verify = {
  'verify.title': 'Check a claim packet',
  'verify.verdict.consistent':
    'Consistent: nothing in it contradicts itself. This does not show who issued it.',
  'verify.verdict.issued':
    'Issued by this utility: the signature is of this very file, and nothing in it contradicts itself.',
  'verify.verdict.issued-differs':
    'The signature is of this very file, yet it contradicts itself. Ask the utility.',
  'verify.verdict.issued-archive':
    'The PDF is genuine: the signature is of this very file, and nothing in it contradicts itself. Its archive is not the one that goes with it.',
  'verify.verdict.archive':
    'Nothing in the PDF contradicts itself; its archive is not the one that goes with it. This does not show who issued it.',
  'verify.verdict.differs': 'It contradicts itself in {count, plural, one {one place} other {# places}}.',
  'verify.verdict.not-issued':
    'The signature does not fit this file. Nothing in the file contradicts itself.',
  'verify.verdict.unreadable': 'It could not be checked.',
  'verify.signature.none': 'No signature was given, so it is not known who issued this file.',
  'verify.signature.no-keys':
    'A signature was given and no keys to check it by, so it is not known who issued this file.',
  'verify.signature.issued':
    'Signed for claim {claimNumber}, revision {revision}, with the key “{keyId}” of the keys that were given. It is worth as much as the place those keys came from.',
  'verify.archive.none': 'No archive was given: the original photos and papers were not looked at.',
  'verify.checked':
    '{utility}, claim {claimNumber}, {revision}. Statement {total}, demand {demand}. Compared: {pages, plural, one {# page} other {# pages}}, {lines, plural, one {# line} other {# lines}} of the statement, {pictures, plural, one {# picture} other {# pictures}}{archive, select, none {} other {, {archive} files of the archive}}.',
  'verify.revision': 'revision {revision}',
  'verify.preview': 'a preview, not issued',
  'verify.sha256': 'SHA-256 of the file: {sha256}',

  'verify.finding.empty': 'The file is empty.',
  'verify.finding.too-large': 'The file has {megabytes} MB; at most {most} MB are read.',
  'verify.finding.not-a-pdf': 'This is not a PDF: it does not begin as one. Choose the packet’s own file.',
  'verify.finding.cut-short':
    'The file is cut short: after {bytes} bytes it breaks off without the mark that ends a PDF. Ask for it again.',
  'verify.finding.encrypted':
    'The file is protected by a password. A packet is sent without one; ask for the file as it was issued.',
  'verify.finding.broken': 'The file is damaged and could not be read: {reason}',
  'verify.finding.no-data':
    'The file has no attachment named {name}, from which a packet is recomputed. It is not a packet, is an older one, or was printed or saved anew by another program.',
  'verify.finding.appended':
    'The file was changed after it was written: {bytes} bytes follow its first end, at byte {at}.',
  'verify.finding.bytes-after-end':
    '{bytes} bytes that belong to nothing follow the end of the file, at byte {at}.',
  'verify.finding.pages-disagree': 'Two readers count its pages differently: {one} and {other}.',

  'verify.finding.attachment-twice':
    '{times} attachments bear the name {name}. Which one a reader sees is chance; the first was read here.',
  'verify.finding.attachment-missing': 'The attachment {name} is missing.',
  'verify.finding.attachment-added':
    'An attachment that is not of the packet was added: {name}, {bytes} bytes.',
  'verify.finding.attachment-differs':
    'The attachment {name} does not say what packet.json gives{at, select, none {.} other {: at {at} it says “{file}”, and packet.json gives “{own}”.}}',
  'verify.finding.data-not-json': 'The attachment {name} is not JSON.',
  'verify.finding.data-not-plain':
    'The attachment {name} is not written as a packet writes it; a field may stand in it twice.',
  'verify.finding.unknown-field': '{path}: no packet has this field.',
  'verify.finding.not-valid': '{path}: {why}',
  'verify.finding.not-computable': 'The work and rates in the file come to no statement: {reason}',

  'verify.finding.line-amount':
    'Line {lineId}: the file says {fileCents}, its own quantities and rates give {ownCents}.',
  'verify.finding.line-field':
    'Line {lineId}, {field}: the file says “{file}”, its own work and rates give “{own}”.',
  'verify.finding.line-added': 'Line {lineId} ({description}) follows from no work in the file.',
  'verify.finding.line-missing':
    'Line {lineId} ({description}, {ownCents}) follows from the work in the file and is not in its statement.',
  'verify.finding.line-twice': 'Two lines of the statement bear one number.',
  'verify.finding.section-sum':
    '{section}: the subtotal says {printedCents}, its lines add up to {sumCents}.',
  'verify.finding.section-amount':
    '{section}: the subtotal says {fileCents}, the work and rates in the file give {ownCents}.',
  'verify.finding.section-missing': '{section}, {ownCents}: this section is not in the statement.',
  'verify.finding.section-added': 'The statement has a section that follows from no work in the file.',
  'verify.finding.total-sum': 'The total says {printedCents}, the lines add up to {sumCents}.',
  'verify.finding.total-amount':
    'The total says {fileCents}, the work and rates in the file give {ownCents}.',
  'verify.finding.statement-field':
    'Statement, {field}: the file says “{file}”, its own work and rates give “{own}”.',
  'verify.finding.demand-above':
    'The demand of {demandCents} is more than the {leftCents} left of {totalCents} when other claims ask {othersCents}.',

  'verify.finding.water-gallons':
    'Water lost: the file says {file} gal here, and {own} gal where the figure comes from.',
  'verify.finding.water-estimate':
    'Water lost, {field}: what was seen gives {own} gal, and the file says otherwise.',
  'verify.finding.water-challenges':
    'Water lost: the file lists {file} doubts of the figure, what was seen gives {own}.',
  'verify.finding.water-sentence': 'Water lost: the file says “{file}”, what was seen gives “{own}”.',
  'verify.finding.water-times': 'Water lost: its times stand twice in the file and differ.',
  'verify.finding.test-day':
    'Flow test of {at}: the file says it was made on {file}, by the clock it was {own}.',
  'verify.finding.test-side':
    'Flow test of {at}: it stands on the wrong side of the strike, which was at {since}.',
  'verify.finding.last-test':
    'The last flow test before the strike is said to be of {at}; the latest in the file is of {own}.',
  'verify.finding.test-class': 'Flow test of {at}: the file says class {file}, its readings give {own}.',
  'verify.finding.timeline-order': 'Timeline, event {number}: {at} stands after {before}.',
  'verify.finding.not-in-timeline': '{field}: {at} is no event of the timeline.',
  'verify.finding.returned-before-struck':
    'It was returned to service at {at}, before it went out at {since}.',
  'verify.finding.not-that-correction':
    'A safety hold is told as corrected on {at}. The record that it names, {submissionId}, is of the kind {kind} and was recorded at {recordedAt}.',
  'verify.finding.not-in-manifest': '{path}: the record {submissionId} is not among those behind the packet.',

  'verify.finding.picture-changed':
    'Page {page}: the picture of {exhibitId} is not the one that was listed. Its SHA-256 is {file}; the list says {own}.',
  'verify.finding.picture-missing': 'The picture of {exhibitId} is on no page (SHA-256 {own}).',
  'verify.finding.picture-added': 'Page {page}: a picture that the packet does not list (SHA-256 {file}).',
  'verify.finding.picture-moved': 'Page {page}: the picture of {exhibitId} is not in its place.',
  'verify.finding.annotation':
    'Page {page}: {count, plural, one {a note, stamp or field lies} other {# notes, stamps or fields lie}} over the page.',
  'verify.finding.overlay':
    'Page {page}: {count, plural, one {a drawing from elsewhere lies} other {# drawings from elsewhere lie}} over the page.',
  'verify.finding.paper-pages': 'Pages of papers: {own} were listed, {count} are there.',
  'verify.finding.paper-differs':
    'Page {page}: the paper says “{printed}” here, its original in the archive “{own}”.',
  'verify.finding.hidden-text': 'Page {page}: it holds text that cannot be seen.',

  'verify.finding.covered-text': 'Page {page}: something is painted over its text.',
  'verify.finding.strange-drawing': 'Page {page}: it is drawn in a way that no packet uses ({what}).',
  'verify.finding.file-acts': 'The file can change what it shows, which no packet can ({what}).',
  'verify.finding.picture-altered': 'Page {page}: a picture is not shown as its bytes are.',
  'verify.finding.outline-differs': 'Outline: it says “{printed}” where the packet’s headings say “{own}”.',
  'verify.finding.printed-moved':
    'Page {page}, “{under}”{hasOf, select, yes {, {of}} other {}}: “{own}” does not stand in its place.',
  'verify.finding.archive-misnamed':
    'Archive, {name}: this is the original of {exhibitId}, under another name or number.',
  'verify.finding.archive-no-data': 'Archive: the copy of the packet’s data, {name}, is not there.',

  'verify.finding.printed-differs':
    'Page {page}, “{under}”{hasOf, select, no {} other {, {of}}}: the page says “{printed}”, the packet’s data give “{own}”.',
  'verify.finding.printed-words':
    'Page {page}, “{under}”: the page says “{printed}”, the packet’s data give “{own}”: other words, the same figures. Another edition of this program may write so.',
  'verify.finding.printed-missing':
    'From page {page}, “{under}”: {count, plural, one {a text is} other {# texts are}} missing, from “{own}”.',
  'verify.finding.printed-added':
    'Page {page}, near “{under}”: the page says more than the data give: “{printed}”.',
  'verify.finding.printed-more':
    'The pages differ in {count, plural, one {one more place} other {# more places}}.',
  'verify.finding.page-without-number': 'Page {page} does not bear its number among the pages.',
  'verify.finding.running-text': 'Page {page}: its head or foot says what is not of the packet: “{printed}”.',
  'verify.finding.pages-missing': 'Pages are missing: {pages} of {said}. The file has {count}.',
  'verify.finding.pages-added': 'The pages say that they are {said}; the file has {count}.',
  'verify.finding.pages-moved': 'Page {page} of the file says that it is page {printed}.',

  'verify.finding.archive-too-large': 'The archive has {megabytes} MB; at most {most} MB are read.',
  'verify.finding.archive-broken': 'The archive could not be opened: {reason}',
  'verify.finding.archive-name-twice': 'The archive holds two files named {name}.',
  'verify.finding.archive-changed':
    'Archive, {name}: this is not the {exhibitId} that was recorded. Its SHA-256 is {file}; the packet says {own}.',
  'verify.finding.archive-missing': 'Archive: {exhibitId} is not in it (SHA-256 {own}).',
  'verify.finding.archive-added': 'Archive, {name}: the packet does not list this file (SHA-256 {file}).',
  'verify.finding.archive-list': 'Archive, {name}: the archive’s own list says SHA-256 {own}; it is {file}.',
  'verify.finding.archive-list-missing':
    'Archive: its own list names {name}, which is not there (SHA-256 {own}).',
  'verify.finding.archive-not-listed': 'Archive, {name}: the archive’s own list does not name it.',
  'verify.finding.archive-no-list': 'Archive: its list, {name}, is not there.',
  'verify.finding.archive-data': 'Archive, {name}: it is not the data that the PDF carries.',

  'verify.finding.keys-not-keys': 'The keys could not be read: give the utility’s key set as JSON (JWK set).',
  'verify.finding.signature-unreadable':
    'The signature could not be read: give the .jws file as it came with the packet.',
  'verify.finding.signature-algorithm': 'The signature is not of the kind that packets bear (ES256).',
  'verify.finding.signature-other-key': 'The signature was made with none of the keys that were given.',
  'verify.finding.signature-wrong': 'The signature is not by the key that it names.',
  'verify.finding.signature-other-file':
    'The signature is of another file: claim {claimNumber}, revision {revision}, SHA-256 {file}. This file’s is {own}.',
  'verify.finding.signature-other-claim':
    'The signature is of claim {claimNumber}, revision {revision}, and the file says otherwise.',

  'verify.command.usage':
    'npm run -s verify -- PACKET.pdf [ARCHIVE.zip] [--signature FILE.jws] [--keys JWKS.json] [--json] [--lang en|es]\n\nRecomputes every figure and hash of a packet from its own file, and of its archive where one is given, and says where they differ. Exit 0: consistent. 1: it differs, or the signature does not fit. 2: it could not be checked.\n\n--signature is the file downloaded beside the packet (the archive holds it as packet.pdf.jws). --keys are the utility’s public keys: download them from the utility’s own address, GET /api/packet-keys, with no sign-in; a signature is worth as much as the place its keys came from.',
  'problem.verify-unknown-option': 'There is no option {option}. See --help.',
  'problem.verify-one-file': 'Name one packet and at most one archive; {count} were named. See --help.',
  'problem.verify-keys-missing': 'Give the keys as well: --keys JWKS.json.',

  'verify.page.lead':
    'A packet carries the hours, rates and readings that its figures come from. This page recomputes every figure and every hash from the file and says where something does not agree.',
  'verify.page.private': 'Nothing is uploaded: the file is read in this browser and goes nowhere.',
  'verify.page.choose': 'Choose files',
  'verify.page.drop':
    'Drop the packet here (PDF). Its archive (ZIP), signature (JWS) and keys (JSON) may come along.',
  'verify.page.chosen': 'Files',
  'verify.page.kind.pdf': 'packet',
  'verify.page.kind.archive': 'archive',
  'verify.page.kind.signature': 'signature',
  'verify.page.kind.keys': 'keys',
  'verify.page.kind.unknown': 'not used: neither PDF, ZIP, JWS nor JSON',
  'verify.page.remove': 'Remove {name}',
  'verify.page.need-pdf': 'Add the packet itself, a PDF.',
  'verify.page.working': 'Checking …',
  'verify.page.findings': 'Where it differs',
  'verify.page.what': 'What was checked',
  'verify.page.fault':
    'This page failed, which says nothing about the packet. Reload it and try again. ({reason})',
  'verify.page.keys-online': 'The keys were asked of this address.',
  'verify.limits':
    'Text is compared sign by sign and by its place, pictures byte by byte. Shapes that somebody drew beside the text, and typefaces whose signs were given another look, are not seen: look at the page as well.',
  'verify.page.home': 'Hydrants out of service',
};
