/** English words: the utility's network model, on the screen and in the loading command. */
export const network = {
  'network.link': 'What the network model says',
  'network.title': 'Network model: {hydrantId}',
  'network.what-it-is':
    'Computed from the utility’s own model of its mains. It is not a measurement: it is as right as the model’s pipes, valves and demands were on its date. A field test stands above it.',
  'network.private': 'For the utility’s own people. It goes into no public page.',
  'network.facts.title': 'Which model',
  'network.facts.datedOn': 'Network as of',
  'network.facts.file': 'File',
  'network.facts.loaded': 'Loaded',
  'network.facts.loaded-by': '{when} by {who} (edition {edition})',
  'network.facts.hour': 'Hour of the model’s clock',
  'network.facts.demand': 'All customers together at that hour',
  'network.facts.size': 'Size',
  'network.facts.size-of':
    '{nodes, plural, one {# node} other {# nodes}}, {links, plural, one {# link} other {# links}}',
  'network.facts.node': 'This hydrant in the model',
  'network.facts.node-near': 'node {nodeId}, {distanceFt} from it on the map',
  'network.facts.node-named': 'node {nodeId}, by the utility’s list',
  'network.flow.title': 'Available flow',
  'network.flow.caption': 'The model beside the latest field test',
  'network.flow.model': 'Model',
  'network.flow.field': 'Field test',
  'network.flow.static': 'Static pressure',
  'network.flow.at-residual': 'Flow at {residualPsi}',
  'network.flow.at-test': 'Pressure at the test’s flow of {flowGpm}',
  'network.flow.cannot': 'cannot give that flow',
  'network.flow.none': 'nothing',
  'network.flow.no-capacity': 'none: the test’s pressure drop was too small',
  'network.flow.other-residual': 'rated at {residualPsi} instead',
  'network.flow.tested': 'Field test of {when}.',
  'network.flow.no-test':
    'This hydrant has no field test on record, so nothing measured stands beside the model.',
  'network.flow.lowest':
    'While it flows, the lowest customer of the model is node {nodeId} at {pressurePsi}{count, plural, =0 {} one {; # customer node is below {residualPsi}} other {; # customer nodes are below {residualPsi}}}.',
  'network.close.title': 'Closing pipes or valves',
  'network.close.intro':
    'Choose what would be closed. The model then says what the pressure would be here and at the hydrants near by. It closes nothing: a valve in the street is found, turned and recorded by the crew.',
  'network.close.choose': 'Close',
  'network.close.more':
    '{count, plural, one {# more, farther along the pipes} other {# more, farther along the pipes}}',
  'network.close.pipe': 'Pipe {linkId}: {diameterIn}, {lengthFt} long',
  'network.close.valve': 'Valve {linkId}: {diameterIn}',
  'network.close.pump': 'Pump {linkId}',
  'network.close.where': 'between {from} and {to}; begins {alongFt} away along the pipes',
  'network.close.where-here': 'between {from} and {to}; at this hydrant',
  'network.close.shut-already': 'closed in the model already',
  'network.close.show': 'Show the pressures',
  'network.close.nothing-chosen': 'Choose at least one pipe or valve to close.',
  'network.close.asking': 'Solving the network…',
  'network.close.closed': 'With {links} closed',
  'network.close.hydrant': 'Hydrant',
  'network.close.before': 'Before',
  'network.close.after': 'After',
  'network.close.this': 'this hydrant',
  'network.close.away': '{distanceFt} away',
  'network.close.cut-off': 'no water: cut off from every source',
  'network.close.cut-off-count':
    '{count, plural, =0 {No customer of the model is cut off.} one {# customer node of the model is cut off.} other {# customer nodes of the model are cut off.}}',
  'network.close.not-in-model': 'Not in the model, so nothing is known of them here:',
  'network.lost.title': 'Upper bound of the water lost',
  'network.lost.flow':
    'With the barrel open to the air this hydrant gives no more than {flowGpm} by the model{through, select, lateral {, through its own lateral taken as new and smooth} other {; its lateral is not known and would let through less}}.',
  'network.lost.bound':
    'It can have run for {minutes} minutes at most, so no more than {boundGal} can be lost.',
  'network.lost.held': 'The main valve held: nothing ran out, whatever the model says.',
  'network.lost.open': 'No bound in gallons can be said yet:',
  'network.lost.not-a-claim': 'It is a bound against figures that are too high, not the figure to bill.',
  'network.failed.try': 'Try again',
  'network.doubts': 'What the solver doubts',

  'problem.no-network-model':
    'No network model is loaded. Whoever runs this system can load the utility’s EPANET file with “npm run network”.',
  'problem.network-island':
    '{count, plural, one {# junction is} other {# junctions are}} connected to no reservoir and no tank, so the network cannot be solved: {nodes}{count, plural, =1 {} =2 {} =3 {} =4 {} =5 {} other { and more}}. Connect or remove them.',
  'problem.hydrant-has-no-node':
    'The network model names no node for hydrant {hydrantId}. Whoever loads the model can add it to its list.',
  'problem.model-file-or-text':
    'Give the model either as modelFile (a path) or as modelText (the file itself).',
  'problem.strike-of-another-hydrant':
    'This strike was of hydrant {hydrantId}, not of this one. Open the model from the strike itself.',
  'problem.start-of-flow-open':
    'Nobody recorded when the hydrant was last seen sound, so how long it ran is open.',

  'network.command.help': `npm run network -- FILE.inp --dated YYYY-MM-DD [options]

Loads the utility's network model (an EPANET input file). It stays private: crew, clerks and managers may ask it
questions; it goes into no public page.

  --dated YYYY-MM-DD  the day whose network the file describes; only its maker knows it
  --crs EPSG:2263     the coordinate system of the file's own map, to find the node of each hydrant
  --nodes FILE.csv    a list "hydrantId,nodeId" that says it by name; it stands above the map
  --within FEET       a node farther from the hydrant is not its node (300)
  --hour HOUR         hour of the model's clock at which it is read (0)
  --by NAME           who loads it; else the account of this machine
  --dry-run           reads, reports and writes nothing
  --lang en|es        language of this report

It needs --crs or --nodes. NETWORK_URL=s3://BUCKET/ loads into a deployment's bucket, INVENTORY_URL=s3://BUCKET/ names
its inventory; without them it is the data folder of this machine.`,
  'network.command.file':
    '{file}: {nodes, plural, one {# node} other {# nodes}}, {links, plural, one {# link} other {# links}}, losses by {headloss, select, hazenwilliams {Hazen-Williams} darcyweisbach {Darcy-Weisbach} other {Chezy-Manning}}',
  'network.command.hour': 'At hour {hour} of its clock its customers take {demandGpm} together.',
  'network.command.doubtful': 'Doubtful:',
  'network.command.matched': 'Hydrants: {found} of {count} have a node.',
  'network.command.distances':
    'By the map: {count}; half of them within {medianFt}, nine of ten within {ninthFt}, the farthest {mostFt} ({hydrantId}).',
  'network.command.listed': 'By the list: {count}.',
  'network.command.unmatched': 'Without a node: {count}. The first of them:',
  'network.command.no-inventory':
    'No inventory is loaded, so it is not known which hydrants have a node. They are looked up when someone asks.',
  'network.command.dry-run': 'Dry run: nothing was written.',
  'network.command.loaded': 'In force as edition {edition}, dated {datedOn}.',
  'network.doubt.no-demand':
    'Nobody takes any water at that hour, so its pressures are higher than any day’s.',
  'network.doubt.hour': 'Its clock ends at hour {hour}; it is read there and not at hour {asked}.',
  'network.doubt.negative':
    '{count, plural, one {# junction has} other {# junctions have}} a pressure below zero at that hour, which no network has.',
  'network.doubt.unfed':
    '{count, plural, one {# junction is} other {# junctions are}} reached by no reservoir and no tank.',
  'network.doubt.no-map':
    '{count, plural, one {# junction has} other {# junctions have}} no place on the file’s map.',
  'network.doubt.few-hydrants':
    'Fewer than half of the hydrants found a node. Check --crs and --within, or give a list with --nodes.',
  'network.doubt.shared':
    '{count, plural, one {# node stands} other {# nodes stand}} for more than one hydrant; those hydrants get the same answer (most: {nodeId}, {most} hydrants).',
  'network.doubt.listed-unknown': 'The list names hydrants that the inventory does not have: {examples}.',

  'problem.network-option-unknown': '{option} is no option of this command. --help lists them.',
  'problem.network-option-needs-value': '{option} needs a value.',
  'problem.network-no-file':
    'Name the EPANET file to load, for example: npm run network -- town.inp --dated 2026-01-15',
  'problem.network-one-file': 'Name one file only.',
  'problem.network-file-not-found': 'There is no file {file} that can be read.',
  'problem.network-needs-date':
    'Say with --dated which day’s network the file describes, as YYYY-MM-DD. It stands beside every figure.',
  'problem.network-date-wrong': '“{value}” is no date. Write it as YYYY-MM-DD.',
  'problem.network-number-wrong': '“{value}” is not a number between {minimum} and {maximum}.',
  'problem.network-needs-rule':
    'Say how hydrants find their nodes: --crs with the coordinate system of the file’s map, or --nodes with a list of hydrants and nodes.',
  'problem.network-list-wrong': 'Line {line} of the list is not “hydrantId,nodeId”: {text}',
  'problem.network-list-twice': 'Line {line} of the list names hydrant {hydrantId} again with another node.',
  'problem.network-list-no-node': 'Line {line} of the list: the model has no junction {nodeId}.',
  'problem.network-none-found':
    'No hydrant of the inventory has a node in this model, so nobody could ask it anything. Check --crs, --within and --nodes.',
} as const;
