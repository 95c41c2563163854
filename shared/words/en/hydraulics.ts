/** English words: hydraulics. Keys begin with the area's own prefix; Spanish must have each of them to compile. */
export const hydraulics = {
  'hydraulics.unit.psi.symbol': 'psi',
  'hydraulics.unit.psi.name': 'pounds per square inch',
  'hydraulics.unit.kPa.symbol': 'kPa',
  'hydraulics.unit.kPa.name': 'kilopascals',
  'hydraulics.unit.bar.symbol': 'bar',
  'hydraulics.unit.bar.name': 'bar',
  'hydraulics.unit.gpm.symbol': 'gpm',
  'hydraulics.unit.gpm.name': 'US gallons per minute',
  'hydraulics.unit.MGD.symbol': 'MGD',
  'hydraulics.unit.MGD.name': 'million US gallons per day',
  'hydraulics.unit.L/s.symbol': 'L/s',
  'hydraulics.unit.L/s.name': 'liters per second',
  'hydraulics.unit.L/min.symbol': 'L/min',
  'hydraulics.unit.L/min.name': 'liters per minute',
  'hydraulics.unit.m3/h.symbol': 'm³/h',
  'hydraulics.unit.m3/h.name': 'cubic meters per hour',
  'hydraulics.unit.in.symbol': 'in',
  'hydraulics.unit.in.name': 'inches',
  'hydraulics.unit.mm.symbol': 'mm',
  'hydraulics.unit.mm.name': 'millimeters',
  'hydraulics.unit.ft.symbol': 'ft',
  'hydraulics.unit.ft.name': 'feet',
  'hydraulics.unit.m.symbol': 'm',
  'hydraulics.unit.m.name': 'meters',
  'hydraulics.unit.mi.symbol': 'mi',
  'hydraulics.unit.mi.name': 'miles',
  'hydraulics.unit.km.symbol': 'km',
  'hydraulics.unit.km.name': 'kilometers',
  'hydraulics.unit.gal.symbol': 'gal',
  'hydraulics.unit.gal.name': 'US gallons',
  'hydraulics.unit.L.symbol': 'L',
  'hydraulics.unit.L.name': 'liters',
  'hydraulics.unit.m3.symbol': 'm³',
  'hydraulics.unit.m3.name': 'cubic meters',
  'hydraulics.unit.lbf.ft.symbol': 'lbf·ft',
  'hydraulics.unit.lbf.ft.name': 'pound-force feet',
  'hydraulics.unit.N.m.symbol': 'N·m',
  'hydraulics.unit.N.m.name': 'newton meters',

  'hydraulics.unit.k.us': 'gpm/√psi',
  'hydraulics.unit.k.metric': 'L/min/√bar',

  'hydraulics.class': 'class {hydrantClass}',
  'hydraulics.no-class': 'no class',
  'hydraulics.color.light-blue': 'light blue',
  'hydraulics.color.green': 'green',
  'hydraulics.color.orange': 'orange',
  'hydraulics.color.red': 'red',
  'hydraulics.color.yellow': 'yellow',
  'hydraulics.color.white': 'white',
  'hydraulics.color.black': 'black',
  'hydraulics.color.silver': 'silver',

  'hydraulics.shape.rounded': 'Smooth and rounded where it meets the barrel',
  'hydraulics.shape.square': 'Square and sharp where it meets the barrel',
  'hydraulics.shape.projecting': 'Square, and reaching into the barrel',
  'hydraulics.shape.picture': '{shape}, coefficient {coefficient}',

  'hydraulics.card.outlet-flow': 'Flow from an outlet by pitot',
  'hydraulics.card.pumper-factor': 'Factor for a pumper outlet',
  'hydraulics.card.diffuser-flow': 'Flow through a diffuser',
  'hydraulics.card.available-flow': 'Flow available at a residual pressure',
  'hydraulics.card.residual-at-flow': 'Residual pressure at a flow',
  'hydraulics.card.pressure-drop': 'Pressure drop of a test',
  'hydraulics.card.hydrant-class': 'Class by rated capacity',

  'hydraulics.curve.title': 'Water supply curve',
  'hydraulics.curve.title-of': 'Water supply curve of {subject}',
  'hydraulics.curve.flow-axis': 'Flow, {unit} (N^1.85 scale)',
  'hydraulics.curve.pressure-axis': 'Residual pressure, {unit}',
  'hydraulics.curve.static': 'static {pressure}',
  'hydraulics.curve.test': 'test {flow} at {pressure}',
  'hydraulics.curve.target': '{flow} at {pressure}',
  'hydraulics.curve.readings':
    'Static pressure {static}. With {flow} flowing, the residual pressure was {residual}.',
  'hydraulics.curve.at-target': 'The supply gives {flow} at a residual of {target}.',
  'hydraulics.curve.within': 'By its readings it lies between {low} and {high} (95%).',
  'hydraulics.curve.below-target':
    'The static pressure is not above {target}, so no flow is available at that residual.',
  'hydraulics.curve.no-projection':
    'The pressure dropped too little to say what flows at a residual of {target}.',

  'hydraulics.warning.drop-too-small':
    'The pressure fell by only {dropPsi} ({dropPercent}% of static), too little to rate the hydrant: at least {neededPsi} ({neededPercent}%) is needed. Open another outlet or another hydrant and read everything again.',
  'hydraulics.warning.residual-below-rating':
    'The residual fell to {residualPsi}, below {ratingResidualPsi}. Close an outlet slowly until it stays at {ratingResidualPsi} or more, and read everything again: low pressure in a main can draw dirty water in.',
  'hydraulics.warning.static-below-rating':
    'The static pressure, {staticPsi}, is not above {ratingResidualPsi}, so nothing is available at that residual. Check that the valves on this main are open and the gauge reads zero in air; if so, tell the water utility’s operations desk.',
  'hydraulics.warning.static-weak':
    'The static pressure, {staticPsi}, is below {weakStaticPsi}: a weak system. This rating is at {ratingResidualPsi}; where the local rule rates weak systems at half the static ({halfStaticPsi}), choose that rule.',
  'hydraulics.warning.rated-at-half-static':
    'The static pressure, {staticPsi}, is below {weakStaticPsi}, so the hydrant is rated at half of it, {ratingResidualPsi}. Mark that residual beside the class on the record.',
  'hydraulics.warning.capacity-uncertain':
    'The readings leave the capacity anywhere from {lowGpm} to {highGpm}. Open another outlet for a larger drop, or use finer gauges, and read everything again.',
  'hydraulics.warning.flowed-at-residual-hydrant':
    'Hydrant {hydrantId} flowed while its own pressure was read, so the drop holds its barrel and lateral too. Read static and residual at a hydrant that stays shut, and repeat the test.',
  'hydraulics.warning.gauge-out-of-calibration':
    'Gauge {gaugeId} was last calibrated on {calibratedOn}, {days} days before this test; at most {mostDays} are allowed. Read again with a gauge that is in date, or check this one against such a gauge.',
  'hydraulics.warning.gauge-calibration-unknown':
    'It is not known when gauge {gaugeId} was calibrated. Check it against a gauge that is in date, and note what both read.',
  'hydraulics.warning.gauge-calibrated-after-test':
    'Gauge {gaugeId} is written down as calibrated on {calibratedOn}, after the test of {testedOn}. Correct the date, or say which calibration held on the day of the test.',
  'hydraulics.warning.reading-above-gauge':
    'Gauge {gaugeId} ends at {rangePsi} and is written down as reading {readPsi}. Correct the reading or the range, or read again with a gauge that reaches farther.',
  'hydraulics.warning.static-jumped':
    'The static pressure is {changePsi} {direction, select, up {higher} other {lower}} than at the last test ({previousStaticPsi} on {testedOn}). Check that the gauge reads zero in air, ask the operations desk about pumps, tanks and valves, and read the static again.',
  'hydraulics.warning.flow-above-last-test':
    'The flow comes to {measuredFlowGpm}, but by the last test ({testedOn}) no more than {mostFlowGpm} could flow with no pressure left. Check the outlet diameters, coefficients and pitot readings, and ask whether the main was changed since.',
  'hydraulics.warning.class-not-at-target':
    'The class is by the flow at {ratingResidualPsi}, not by the flow at {targetResidualPsi} that was asked for. Paint the hydrant by the class.',
  'hydraulics.warning.flow-implausible':
    'The flow comes to {measuredFlowGpm}, more than {mostFlowGpm}. Check the outlet diameters and pitot readings for a slip of the pen.',
  'hydraulics.warning.pitot-too-low':
    'Outlet {outlet}: the pitot read {pitotPsi}, below {minimumPsi}, where the needle is hard to read. {outletKind, select, pumper {Flow a hose outlet instead} other {Close another outlet, or flow a smaller one}}, and read everything again.',
  'hydraulics.warning.pitot-too-high':
    'Outlet {outlet}: the pitot read {pitotPsi}, above {maximumPsi}. {outletKind, select, pumper {Open a hose outlet as well} other {Open another outlet}} to bring it down, and read everything again.',
  'hydraulics.warning.pitot-above-static':
    'Outlet {outlet}: the pitot read {pitotPsi}, more than the static pressure, {staticPsi}. Unless the flow hydrant stands well below the other, check both gauges and read again.',
  'hydraulics.warning.pumper-pitot-below-table':
    'Outlet {outlet}: there is no factor for a pumper outlet below {tablePsi}, and the pitot read {pitotPsi}; the factor for {tablePsi} is used. Flow a hose outlet instead and read everything again.',
  'hydraulics.warning.outlet-may-be-pumper':
    'Outlet {outlet} is {diameterIn} wide: say whether it is a pumper outlet. Computed as a hose outlet its flow may be a sixth too high.',
  'hydraulics.warning.coefficient-unusual':
    'Outlet {outlet}: a coefficient of {coefficient} is unusual. Feel the inside of the outlet: 0.90 rounded, 0.80 square, 0.70 reaching into the barrel.',

  'hydraulics.answer.rated':
    '{hydrantClass}, {capacity}, {low} to {high} at {coverage}%, class {hydrantClass} {chance} sure',
  'hydraulics.answer.chance': '{percent}%',
  'hydraulics.answer.chance-over': 'over 99%',
  'hydraulics.answer.nothing': '{hydrantClass}: nothing flows at {residual}, the static is not above it',
  'hydraulics.answer.no-class': 'No class: the pressure fell too little to rate the hydrant',
  'hydraulics.answer.basis':
    'From the readings alone: gauges, diameter and coefficient. What a looped or pumped network makes of the relation is not in it.',
  'hydraulics.cause.pressure': 'static and residual pressure',
  'hydraulics.cause.pitot': 'pitot readings',
  'hydraulics.cause.diameter': 'outlet diameters',
  'hydraulics.cause.coefficient': 'outlet coefficient',
  'hydraulics.cause.pumper-factor': 'pumper outlet factor',
  'hydraulics.cause.diffuser': 'diffuser constant',
  'hydraulics.cause.meter': 'flow meter',
  'hydraulics.assumed.pressure-gauge': 'pressure gauge of the usual grade',
  'hydraulics.assumed.pitot-gauge': 'pitot gauge of the usual grade',
  'hydraulics.assumed.diameter-measured': 'diameters measured inside the outlets',

  'hydraulics.caution.traffic':
    'Traffic: set out cones and signs before anyone steps into the road, and keep a lookout.',
  'hydraulics.caution.discharge-path':
    'Look where the water will go. No basement, bank, road or passer-by stands in its path; use a diffuser where one would.',
  'hydraulics.caution.ice':
    'In frost, do not flow onto roads or walks; if it cannot be helped, have the ice treated before you leave.',
  'hydraulics.caution.slowly':
    'Open and close slowly, and open a dry barrel fully: a valve closed fast hammers the main, and a part-open hydrant discharges at its drain.',
  'hydraulics.caution.stand-clear':
    'Never stand over a bonnet or in front of a cap that may be under pressure. Let the air out first.',
  'hydraulics.caution.dechlorinate':
    'Where discharge rules ask for it, take the chlorine out before the water reaches a stream or storm drain.',
  'hydraulics.caution.no-pressure':
    'Turn no bolt before the hydrant is isolated, its pressure is proved gone and it has drained.',
  'hydraulics.caution.rules-decide': 'Where the maker’s manual or a local rule says otherwise, it decides.',

  'problem.given-in-two-units': 'This is given in another unit as well ({other}). Give it once.',
  'problem.range-upside-down': 'The upper end must be above the lower one.',
  'problem.bands-not-falling':
    'List the classes from the highest flow down; this one must begin below the one before.',
  'problem.class-twice': 'Class {hydrantClass} is listed twice.',
  'problem.bands-end-above-zero': 'The last class must begin at 0, so that every hydrant has one.',
  'problem.flow-given-twice': 'Give either the outlets or a metered flow, not both.',
  'problem.units-differ':
    'You cannot convert {from} to {to}: they measure different things. Choose one of: {choices}.',

  'hydraulics.compute.flow-test.summary':
    'What a flow test says of a hydrant: measured flow, flow at a residual, class, doubts.',
  'hydraulics.compute.flow-test.output':
    'answer in a line; measuredFlowGpm; availableFlowGpm at targetResidualPsi, null when the drop is too small; hydrantClass AA, A, B, C or null, and className as the utility names it; drop with psi, fraction of static, sufficient; rating with residualPsi, basis, capacityGpm; interval of the capacity from the readings at 95% (lowGpm, highGpm, chance of each class, what causes it, what was assumed), null without a capacity; flow of each outlet and hydrant; warnings as code, params, and a sentence that says what to do; cautions.',
  'hydraulics.compute.supply-curve.summary':
    'The supply curve of a flow test, with the interval of its readings.',
  'hydraulics.compute.supply-curve.output': 'svg; description in sentences for those who do not see it.',
  'hydraulics.compute.outlet-flow.summary': 'Flow from one outlet by pitot, diffuser or meter.',
  'hydraulics.compute.outlet-flow.output': 'flowGpm; pumperFactor that is in it (1 for a hose outlet).',
  'hydraulics.compute.available-flow.summary': 'Flow at a residual pressure, from one test.',
  'hydraulics.compute.available-flow.output':
    'flowGpm at targetResidualPsi, null when the drop is too small to say; drop with psi, fraction of static, sufficient.',
  'hydraulics.compute.hydrant-class.summary': 'Class and color of a rated capacity.',
  'hydraulics.compute.hydrant-class.output':
    'hydrantClass AA, A, B or C; color; wholeGpm, the rounded flow it was judged by.',
  'hydraulics.compute.convert.summary': 'A value in another unit.',
  'hydraulics.compute.convert.output': 'value in the unit asked for; factor it was multiplied by.',

  'problem.beyond-numbers': 'In {to} this is more than a computer’s numbers hold. Give a smaller value.',
  'hydraulics.command.usage':
    'Usage: npm run -s compute -- NAME [FILE] [--units metric] [--locale es]\nReads JSON from FILE, or from standard input, and prints the result as JSON. Quantities may be given in metric by their names (staticKpa, diameterMm, flowLPerMin). Exit code 2 means that the input has problems; each is listed.',
  'hydraulics.command.names': 'Computations:',
  'hydraulics.command.gives': 'Gives: {output}',
  'hydraulics.command.example': 'Example:',
  'hydraulics.command.refused':
    '{count, plural, one {There is a problem} other {There are # problems}} with this input:',
  'problem.unknown-computation': 'There is no computation "{name}". Choose one of: {names}.',
  'problem.too-many-arguments': 'Give one name and at most one file; this is too many: {extra}.',
  'problem.file-unreadable':
    'Cannot read {file}: {reason, select, ENOENT {there is no such file} EACCES {you may not read it} EISDIR {it is a folder} other {{reason}}}.',
  'problem.no-input': 'There was no input. Name a file, or pipe JSON in.',
  'problem.input-too-large': 'The input is larger than {megabytes} MB.',
  'problem.input-not-json':
    'This is not valid JSON{line, select, none {} other { (line {line}, column {column})}}: {detail}',
} as const;
