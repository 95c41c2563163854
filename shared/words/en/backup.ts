/** English words: backup, restore and erasing, which are commands. */
export const backup = {
  'backup.usage': 'Give one file: npm run backup -- FILE. npm run backup -- --help says more.',
  'backup.help':
    'npm run backup -- FILE\n\nWrites every fact, its personal fields, the numbers that are taken, and letters and messages into one new file. It holds people’s names: keep it as you keep the tables, and delete it when its time is over. Photos and packets stay where they are; the file says which there were.\n\nStop the server first on this machine. For a deployment set SUBMISSIONS_TABLE, PERSONAL_TABLE, PROJECTIONS_TABLE, UNIQUE_TABLE, OUTBOX_TABLE, UNPROJECTED_TABLE, INVENTORY_URL and EVIDENCE_URL as the outputs of its data stack name them, and AWS_REGION; it may go on working. DYNAMODB_ENDPOINT names another server of the same tables.',
  'backup.file-there': 'There is a file {file} already. Nothing was written; choose another name.',
  'backup.file-unwritable': 'The file {file} cannot be written ({reason}).',
  'backup.file-unreadable': 'The file {file} cannot be read ({reason}).',
  'backup.not-one': 'The file {file} is no backup of this program. Nothing was restored.',
  'backup.newer':
    'The backup {file} is of format {format}; this version reads up to {newest}. Use the version that wrote it, or a later one. Nothing was restored.',
  'backup.cut-off': 'The backup {file} was cut off: its end is missing. Nothing was restored; take another.',
  'backup.changed':
    'The backup {file} is not as it was written: its count or its SHA-256 does not fit. Nothing was restored; take another.',
  'backup.not-empty':
    'There is something already in: {tables}. Nothing was restored. Restore into empty tables; or, to add what is missing to those that stand and replace nothing, say --add-missing.',
  'backup.written':
    'Wrote {file}: {submissions, plural, one {# fact} other {# facts}}, {personal, plural, one {# row} other {# rows}} of personal fields, {unique, plural, one {# number} other {# numbers}}, {outbox, plural, one {# row} other {# rows}} of letters and messages; {evidence, plural, one {# document} other {# documents}} in the evidence store, {awaited} awaited.',
  'backup.fingerprint': 'Kept for reading: {items, plural, one {# item} other {# items}}, SHA-256 {sha256}.',
  'restore.usage': 'Give one file: npm run restore -- FILE. npm run restore -- --help says more.',
  'restore.help':
    'npm run restore -- FILE [--add-missing]\n\nReads a backup whole, puts it into empty tables, erases anew what was erased since, computes everything kept for reading, and looks that every document still stands in the evidence store. Exit 0: all of it is as it was backed up.\n\n--add-missing  also into tables that hold something: adds what is missing and replaces nothing\n\nThe tables are those of npm run backup.',
  'restore.rows':
    'Backup of {takenAt}: {added, plural, one {# row} other {# rows}} added, {same} there already, {other} there with other content and left so, {erased} left out because erased since.',
  'restore.other': 'Stands with other content: {table} {key}',
  'restore.erasures':
    '{count, plural, one {# erasure} other {# erasures}} of personal fields carried out again.',
  'restore.same': 'That is what was kept when the backup was made.',
  'restore.not-same':
    'That is not what was kept when the backup was made ({sha256}): another inventory is in force, facts were added or erased since, or what was kept was not right.',
  'restore.missing': 'Missing in the evidence store: {sha256}',
  'restore.evidence':
    'Evidence: {there, plural, one {# document} other {# documents}} there, {missing} missing.',
  'erase.usage':
    'Give one record: npm run erase -- strike:ID, hydrant:ID or claim:ID. npm run erase -- --help says more.',
  'erase.help':
    'npm run erase -- RECORD --ground GROUND --decided-by PERSON [--reference TEXT] [--only ID] [--write]\n\nSays which personal fields a record holds, without what they say; with --write erases them for good and records that, by whom and why. RECORD is strike:ID, hydrant:ID or claim:ID.\n\n--ground      retention-ended, person-asked, court-ordered or wrong-person\n--decided-by  the id of the person who decided it\n--reference   number of the request, order or rule; no names\n--only        one submission of the record; may be given several times\n\nA claim’s legal hold forbids it. Issued packets, sent letters and photos are not changed. The tables are those of npm run backup.',
  'erase.ground': 'Say why with --ground: one of {grounds}.',
  'erase.who':
    'Say who decided it with --decided-by, by their id; a reference has no more than 200 characters.',
  'erase.not-there': 'Nothing personal is kept in {stream} of: {ids}. Nothing was erased.',
  'erase.would': '{submissionId}  {kind}: {paths}',
  'erase.nothing':
    'Nothing personal is kept in {stream}: it holds none, it was erased before, or there is no such record. Nothing was erased.',
  'erase.on-hold':
    'Nothing was erased: claim {claims} is under a legal hold. Whoever may end the hold does that first.',
  'erase.not-yet':
    'Nothing was erased yet. To erase the personal fields of {count, plural, one {this submission} other {these # submissions}} for good, say --write.',
  'erase.done':
    'Erased the personal fields of {count, plural, one {# submission} other {# submissions}}, and recorded that.',
  'erasure-ground.retention-ended': 'Retention ended',
  'erasure-ground.person-asked': 'The person asked for it',
  'erasure-ground.court-ordered': 'A court ordered it',
  'erasure-ground.wrong-person': 'The wrong person was recorded',
} as const;
