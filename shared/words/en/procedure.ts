/**
 * English words: the steps of a repair, each with the caution that belongs to it, its hold points, and the printed sheet.
 * Our own words for common practice; the maker's manual, local codes and licensed practice decide, and every page that
 * shows a step says so. Rules that are named (29 CFR 1926.651 and .652, AWWA C651 and M17, NFPA 25) are from memory or
 * second-hand, except 1926.651(b), which was seen.
 */
export const procedure = {
  'scope.breakaway': 'Breakaway repair, from above ground',
  'scope.dig': 'Dig: the barrel or what lies below it',
  'scope.main': 'Dig with the main opened',
  'scope.replace': 'Dig: the whole hydrant replaced',
  'barrel.dry': 'dry barrel',
  'barrel.wet': 'wet barrel',

  'phase.safe': 'Make it safe',
  'phase.open': 'Take down and look',
  'phase.ground': 'Below ground',
  'phase.rebuild': 'Build it up',
  'phase.prove': 'Fill and prove it',
  'phase.back': 'Leave it ready',

  'step-hazard.traffic': 'Traffic',
  'step-hazard.lines': 'Energized lines',
  'step-hazard.stored-pressure': 'Stored pressure',
  'step-hazard.pinch': 'Pinch point',
  'step-hazard.lifting': 'Heavy lift',
  'step-hazard.excavation': 'Excavation',
  'step-hazard.chlorine': 'Chlorine',
  'step-hazard.cold': 'Ice and cold',

  'step.traffic-and-protection': 'Traffic controlled, protective gear on',
  'step.traffic-and-protection.caution':
    'Set cones and lights before you step into the road. Hard hat, eye protection, gloves, boots, high-visibility vest.',
  'step.vehicle-and-lines-safe': 'Lines and water under control, vehicle moved only then',
  'step.vehicle-and-lines-safe.caution':
    'Leave the vehicle where it is until the power company has made any downed line safe and the water is shut: it may hold the hydrant down, and stand under voltage. Test washed-out ground before you step on it.',
  'step.locate-ticket': 'Utilities located, ticket number written down',
  'step.locate-ticket.caution':
    'Call for a locate, an emergency one if need be, before the ground is opened, and wait for the marks. Dig by hand near them.',
  'step.isolated': 'Isolation valve closed',
  'step.isolated.caution':
    'Count the turns and write them down. If it does not hold, close the next valve and list who loses water. Tag what you closed.',
  'step.pressure-gone': 'Pressure proved gone',
  'step.pressure-gone.caution':
    'Water held under pressure can throw a bonnet. Open a nozzle cap slowly, standing to the side, and see that nothing comes.',
  'step.drained': 'Barrel drained',
  'step.drained.caution':
    'Do not take anything apart over standing water. If the drain is blocked, take the next step instead.',
  'step.pumped-out': 'Drain blocked: barrel pumped out instead',
  'step.pumped-out.caution':
    'Only where the barrel does not drain. Pump it dry and see that it stays so: water that rises again comes through the main valve.',
  'step.water-lowered': 'Water let down below the break',
  'step.water-lowered.caution':
    'A wet barrel does not drain. Open the lowest outlet, then pump down to below the flange. Water that rises again means the valve does not hold.',
  'step.taken-down': 'Parted hardware taken down',
  'step.taken-down.caution':
    'The nozzle section is heavy: lift it with a strap or two people, and keep hands out of the flange.',
  'step.stem-freed': 'Stem freed',
  'step.stem-freed.caution':
    'A stem under tension can spring. Keep your face and hands out of its line. Do not pull or turn the lower stem: it holds the main valve shut.',
  'step.top-opened': 'Top opened',
  'step.top-opened.caution': 'Loosen bolts in turn and stay clear until you know no pressure is behind them.',
  'step.hidden-damage-checked': 'Checked for hidden damage',
  'step.hidden-damage-checked.caution':
    'Look for a bent stem, cracked barrel, scored seat and blocked drain, with a light down the barrel. What cannot be mended from the top means a dig.',
  'step.dug': 'Ground opened',
  'step.dug.caution':
    'Keep the spoil and machines 2 ft back from the edge. If you smell gas: stop, move away, call.',
  'step.trench-protected': 'Sides of the trench protected',
  'step.trench-protected.caution':
    'From 5 ft deep, and in bad ground before that: slope, shore or shield it, with a ladder from 4 ft. A competent person judges it each day, and after rain or a washout.',
  'step.in-excavation': 'Work in the trench begun',
  'step.in-excavation.caution':
    'Nobody goes in before the sides are protected and the water in it is pumped out, and nobody is in it alone.',
  'step.main-opened': 'Main opened',
  'step.main-opened.caution':
    'Both sides shut and without pressure. Keep trench water below the opening; list the customers without water.',
  'step.old-hydrant-out': 'Old hydrant lifted out',
  'step.old-hydrant-out.caution':
    'Rig it before the last bolt. The valve alone may hold the lateral: stay out of its line, and mind that an unrestrained valve can move.',
  'step.lower-barrel-changed': 'Lower barrel and broken parts below ground changed',
  'step.lower-barrel-changed.caution':
    'Heavy, and set in a trench: rig it, and keep hands out of the joint. New barrel gasket.',
  'step.main-repaired': 'Main repaired',
  'step.main-repaired.caution':
    'Swab new pipe, fittings and clamps with disinfectant before they go on. Restrain what thrust can push.',
  'step.new-hydrant-set': 'New hydrant set plumb, at its bury line, facing the road',
  'step.new-hydrant-set.caution':
    'Rig it and guide it with a bar, not with fingers. The bury line stands at finished ground; nozzles clear of posts and walls.',
  'step.main-disinfected': 'Main flushed and disinfected',
  'step.main-disinfected.caution':
    'Where the main was opened: to AWWA C651 and local rules, with their sample. Gloves, goggles and fresh air for chlorine; never mix it with anything; dechlorinate what you discharge.',
  'step.thrust-block-set': 'Thrust block or restraint sound',
  'step.thrust-block-set.caution':
    'Against undisturbed ground, clear of the drain. Do not fill before it can carry load.',
  'step.drain-bed-laid': 'Drain stone laid, drain left open',
  'step.drain-bed-laid.caution':
    'Clean stone around the drain with a cover over it, so that soil does not close it. A plugged drain stays plugged and is tagged.',
  'step.faces-cleaned-gaskets-new': 'Faces cleaned, gaskets new',
  'step.faces-cleaned-gaskets-new.caution':
    'Wear eye protection while scraping. Use only lubricant approved for drinking water.',
  'step.breakaway-parts-fitted': 'New breakaway parts fitted',
  'step.breakaway-parts-fitted.caution':
    'Flange and coupling have a right way up, and their groove or notch a side: follow the maker’s drawing. Never reuse a broken one.',
  'step.nozzle-section-set': 'Nozzle section set and facing the road',
  'step.nozzle-section-set.caution':
    'Heavy lift, pinch point: guide it with a bar, not with fingers. Pumper nozzle to the road.',
  'step.tightened-to-torque': 'Bolts tightened crosswise to torque',
  'step.tightened-to-torque.caution':
    'Use the maker’s torque for this model; too tight can crack the flange. Crosswise, in passes, then once round.',
  'step.outlet-valves-checked': 'Every outlet valve turns freely and closes',
  'step.outlet-valves-checked.caution': 'A forced outlet valve hides a bent stem: take it out and look.',
  'step.thrust-nut-set': 'Thrust nut set, turns freely',
  'step.thrust-nut-set.caution': 'If it binds, take it apart again: a forced stem hides a bend.',
  'step.top-closed': 'Top closed up',
  'step.top-closed.caution': 'Follow the maker’s order for bonnet, seals and weather cover.',
  'step.refilled-slowly': 'Refilled slowly',
  'step.refilled-slowly.caution':
    'Open the isolation valve a little at a time with a cap loose to let air out. Trapped air can burst a cap off.',
  'step.leaks-looked-for': 'Looked for leaks under pressure',
  'step.leaks-looked-for.caution':
    'Caps on, hydrant open, air out: flange, bonnet, caps, and the ground around it. Stand to the side of caps.',
  'step.backfilled': 'Trench filled and compacted',
  'step.backfilled.caution':
    'Only after the joints were seen under pressure. In layers; nobody in the trench when the shield comes out.',
  'step.opened-and-closed': 'Opened and closed fully',
  'step.opened-and-closed.caution':
    'Slowly, and all the way: part open, a dry barrel discharges at its drain and washes out the ground. Stop at the stop; do not force it.',
  'step.drain-down-timed': 'Drained down within its time',
  'step.drain-down-timed.caution':
    'Hydrant closed, one cap off: the hand on the nozzle feels suction. Within 60 minutes; water left in it freezes and breaks it.',
  'step.flushed': 'Flushed until clear',
  'step.flushed.caution':
    'Aim the stream away from traffic, people and energized lines. Dechlorinate where it can reach a stream or storm drain; salt or sand what can freeze.',
  'step.flow-tested': 'Flow tested',
  'step.flow-tested.caution':
    'With the test form, which has its own cautions. May be put off by name; everyone will see that it was not re-tested.',
  'step.caps-on': 'Caps on',
  'step.caps-on.caution': 'Gaskets in, chains free, hand tight and a little more.',
  'step.height-checked': 'Breakaway plane at its height above ground',
  'step.height-checked.caution':
    'As the maker gives it, often 2 to 6 inches above finished ground: too low, the next strike breaks the barrel instead.',
  'step.surface-restored': 'Surface restored, or plated and guarded',
  'step.surface-restored.caution': 'A plate or soft fill in the road is marked until it is paved.',
  'step.marked-off': 'Out-of-service mark taken off',
  'step.marked-off.caution':
    'Only when every test is passed and every closed valve reopened. Recorded with the return to service.',
  'step.dispatch-told': 'Dispatch told that it is back',
  'step.dispatch-told.caution': 'Write down who took the message. Recorded with the return to service.',

  'value.hiddenDamage.nothing': 'Nothing found',
  'value.hiddenDamage.bent-stem': 'Bent stem',
  'value.hiddenDamage.cracked-barrel': 'Cracked barrel',
  'value.hiddenDamage.scored-seat': 'Scored seat',
  'value.hiddenDamage.blocked-drain': 'Blocked drain',
  'value.hiddenDamage.other': 'Something else',
  'value.trenchProtection.sloped': 'Sloped or benched',
  'value.trenchProtection.shored': 'Shored',
  'value.trenchProtection.shield': 'Trench box',
  'value.trenchProtection.stable-rock': 'Cut in stable rock',
  'value.trenchProtection.shallow-and-sound': 'Under 5 ft, no sign of a cave-in',
  'section.repair.hidden': 'Hidden damage',
  'section.repair.locate': 'Locate ticket',
  'section.repair.trench': 'Trench',
  'field.repair.hiddenDamage': 'What was found',
  'field.repair.needsDig': 'Does it need a dig?',
  'field.repair.dig.locateTicket': 'Locate ticket number',
  'field.repair.dig.locateTicket.help': 'Without it the dig stands as a breach.',
  'field.repair.dig.locateClearFrom': 'Ticket clear from',
  'field.repair.dig.trenchDepthFt': 'Depth of the trench',
  'field.repair.dig.trenchProtection': 'How the sides are held',
  'field.repair.dig.competentPersonWorkerId': 'Competent person',
  'problem.nothing-and-something': 'Nothing was found, or something was: leave one of them out.',

  'procedure.title': '{scope}, {barrel}',
  'procedure.decides':
    'The maker’s manual, local codes and licensed practice decide; where they say otherwise, they hold.',
  'procedure.type-unknown': 'The type of this hydrant is not known: it is held to a dry barrel’s steps.',
  'procedure.next': 'Next',
  'procedure.if-needed': 'Only where it applies',
  'procedure.not-here': 'Recorded, though this procedure does not ask for it',
  'procedure.ticked': 'Done {when}, {who}',
  'procedure.more': 'Change time or name, add a note',
  'procedure.recorded': 'Recorded: {when}, {who}.',
  'procedure.valve-closed':
    'Valve {valveId} is recorded closed: {when}, {who}. Done here says that it holds.',
  'procedure.elsewhere.flow-test': 'Goes into its own form, with the readings.',
  'procedure.elsewhere.return-to-service': 'Goes into the return to service.',
  'procedure.to.flow-test': 'Record the flow test',
  'procedure.to.return-to-service': 'Record the return',
  'procedure.water-let-in':
    'Water was let in again since. Before it is opened once more, what it waits for is confirmed anew.',
  'procedure.to-dig': 'Go on as a dig',
  'procedure.dig-proposed':
    'A cracked barrel is not mended from the top. Stop here, make it safe, and go on as a dig.',
  'procedure.dig-note':
    'The steps below are now those of a dig. It waits for a locate ticket, and nobody enters before the sides are held.',
  'procedure.too-deep':
    '5 ft and deeper is sloped, shored, shielded or cut in stable rock (29 CFR 1926.652(a)(1), from memory). Check both.',
  'procedure.by-model': 'Model {model}',
  'procedure.joint':
    '{joint}: {known, select, yes {{torque}.} other {{torque}}}{count, plural, =0 {} other { # bolts, in the order {order}.}}',
  'procedure.to-ticket': 'To the locate ticket',
  'procedure.opens.left': 'Opens to the left (counterclockwise), by the model’s record.',
  'procedure.opens.right': 'Opens to the right (clockwise), by the model’s record.',
  'procedure.lubricant':
    '{where}: {what}{manual, select, none {} other {, by {manual}}}{page, select, none {} other {, page {page}}}.',
  'procedure.sheet-link': 'Print this procedure as a sheet',
  'procedure.sheet-any': 'Repair steps on paper',
  'procedure.in-repair': 'The repair says: done {when}, {who}.',

  'proof.pumped-out': 'Drain plugged: barrel pumped dry',
  'proof.pumped-out.help':
    'Only in place of the drain-down, for a drain that is plugged and stays so. Mark the hydrant to be pumped after every use.',
  'proof.disinfected': 'Main flushed and disinfected',
  'public.proof.pumped-out': 'pumping dry',
  'public.proof.disinfected': 'disinfection',
  'hold.proof-not-deferrable': 'May not be put off after a repair: {proof}.',
  'strike.pumped': 'Drain plugged: pump the barrel dry after every use',
  'strike.pumped-by': 'Pumped dry {when}, {byWorkerId}.',
  'strike.breach-corrected': 'A safety hold stood as passed, and the record was corrected',
  'strike.breach-corrected-by': 'Corrected {when} by {byPersonId}: {reason}',

  'breach.take-down-before-safe': 'Taken down by {byWorkerId} before this was confirmed by name: {missing}.',
  'breach.opened-before-safe': 'Opened up by {byWorkerId} before this was confirmed by name: {missing}.',
  'breach.main-opened-before-safe':
    'Main opened by {byWorkerId} before this was confirmed by name: {missing}.',
  'breach.dug-before-locate': 'Ground opened by {byWorkerId} before this was recorded by name: {missing}.',
  'breach.entered-before-protected':
    'Work in the trench begun by {byWorkerId} before this was confirmed by name: {missing}.',

  'sheet.title': 'Repair sheet',
  'sheet.lead':
    'For a truck with no phone. Type it in afterward with the repair form: same steps, same order.',
  'sheet.print': 'Print',
  'sheet.which': 'Procedure',
  'sheet.hydrant': 'Hydrant',
  'sheet.place': 'Place',
  'sheet.model': 'Model',
  'sheet.printed': 'Printed {when}. A newer record of the model may say otherwise.',
  'sheet.model-none': 'Not known: take torques from the maker’s manual.',
  'sheet.date': 'Date',
  'sheet.crew': 'Crew lead',
  'sheet.valve': 'Valve closed, turns',
  'sheet.ticket': 'Locate ticket no., clear from',
  'sheet.trench': 'Trench depth, sides held by',
  'sheet.competent': 'Competent person',
  'sheet.step': 'Step',
  'sheet.time': 'Time',
  'sheet.name': 'Name',
  'sheet.stop': 'STOP. Not before a time and a name stand at: {steps}.',
  'sheet.again': 'Opened again after water was let in? Prove it again first, on a new sheet.',
  'sheet.if-dig': 'If yes, stop, leave it safe, and take the sheet for a dig.',
  'sheet.joints': 'Joints of this model',
  'sheet.joint': 'Joint',
  'sheet.torque': 'Torque',
  'sheet.order': 'Order',
  'sheet.used': 'Used, wrench no.',
  'sheet.source': 'Manual, page',
  'sheet.see-joints': 'Torques and order: in the table at the end.',
  'sheet.hours': 'People and machines',
  'sheet.who-or-what': 'Person’s number or machine code',
  'sheet.from': 'From',
  'sheet.to': 'To',
  'sheet.notes': 'Notes, parts beyond the kit, photos taken',
  'sheet.kit': 'Kit',
  'sheet.part': '{quantity} × {partNumber} ({description})',
  'sheet.sources':
    'Sources: usual practice of the trade, no single source; locate before digging 29 CFR 1926.651(b); trenches 1926.651 and .652, disinfection AWWA C651, plugged drains AWWA M17, usual height above ground (from memory); drain-down in 60 minutes NFPA 25 (second-hand). Check them against the books you hold.',
  'sheet.footer': '{utility} · {hydrant} · {scope}',
  'sheet.one-hydrant': 'hydrant {hydrantId}',
  'sheet.any-hydrant': 'any hydrant',
} as const;
