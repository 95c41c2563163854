/** English words: water lost, tightening and the network model. */
export const water = {
  'hydraulics.card.hazen-williams': 'Friction loss in a pipe',
  'hydraulics.card.velocity-pressure': 'Pressure in the speed of the water',
  'hydraulics.card.vertical-jet': 'Flow of an upright jet',
  'hydraulics.card.rim-weir': 'Flow over the rim of an upright pipe',
  'hydraulics.card.horizontal-throw': 'Flow of a level stream by its throw',
  'hydraulics.card.hole-flow': 'Flow through a hole under pressure',

  'hydraulics.history.title': 'Rated capacity over time',
  'hydraulics.history.title-of': 'Rated capacity of {subject} over time',
  'hydraulics.history.test': '{testedOn}: {capacity}, class {hydrantClass}.',
  'hydraulics.history.none-rated': 'No test gives a rating.',
  'hydraulics.history.loss':
    'The capacity fell by {percent}% since {since}, from {from} to {to}: more than the readings explain.',
  'hydraulics.history.possible-loss':
    'The capacity fell by {percent}% since {since}, from {from} to {to}. The readings might explain it ({chance} sure that it fell): test again with a larger drop.',
  'hydraulics.history.steady': 'The capacity is about what it was on {since}: {from} then, {to} now.',
  'hydraulics.history.gain': 'The capacity rose by {percent}% since {since}, from {from} to {to}.',
  'hydraulics.history.between': 'By the readings the change lies between {low}% and {high}%.',
  'hydraulics.history.pressure':
    'The static is {change} lower and explains most of it: ask the operations desk about pumps, tanks and zone valves.',
  'hydraulics.history.pipes':
    'The pressure does not explain it: look first for a valve left part closed, then for deposits in main and lateral.',
  'hydraulics.compute.flow-test-history.summary':
    'A hydrant’s tests over time, losses of capacity, and before and after each repair.',
  'hydraulics.compute.flow-test-history.output':
    'tests, oldest first, each with its answer, doubts, and change against the last rated one (sentence, fraction, its interval, chance of a loss, verdict: loss, possible-loss, steady or gain); sinceFirst, the latest against the first; repairs with before, after and change; svg of the capacity over time with its description.',

  'water.method.jet': 'the height of the jet',
  'water.method.throw': 'the throw of the stream',
  'water.method.opening': 'the size of the opening and the pressure behind it',
  'water.method.full-bore': 'the lateral and the main, open at full bore',
  'water.method.class': 'a word for the opening, which nobody measured',
  'water.limit.flow-test': 'the hydrant’s own flow test, carried on to no residual pressure',
  'water.limit.model': 'the network model',
  'water.limit.frictionless': 'the bore of the lateral with no friction at all',
  'water.figure.low': 'low',
  'water.figure.best': 'best',
  'water.figure.high': 'high',
  'water.figure.own': 'chosen',

  'water.said.valve-held': 'No water was lost: the hydrant’s main valve held.',
  'water.said.no-flow-seen': 'No water was lost: none was seen flowing.',
  'water.said.own-figure': 'What was seen makes no estimate.',
  'water.said.metered': 'Metered: {best} (±{percent}%).',
  'water.said.flow': 'By {method}: {best}, between {low} and {high}{accuracy}.',
  'water.said.accuracy': ' (±{percent}%)',
  'water.said.limited': 'Held to {limit} by {by}.',
  'water.said.minutes': 'It ran for {best}, at least {low}, at most {high}.',
  'water.said.minutes-exact': 'It ran for {best}.',
  'water.said.minutes-open': 'It ran for {best}, at least {low}; how long at most is not known.',
  'water.said.minute': '{minutes, plural, one {# minute} other {# minutes}}',
  'water.said.gallons': 'Low {low}, best {best}, high {high}.',
  'water.said.gallons-open': 'Low {low}, best {best}; how much at most is not known.',
  'water.said.claim': 'The claim uses the {figure} figure, {claim}.',
  'water.said.reason': 'Reason: {reason}',
  'water.said.used': 'Counted apart: flushing {flushing}, flow tests {flowTest}.',

  'water.compute.water-lost.summary':
    'Water lost at a strike: low, best and high, by what was seen and how long it ran.',
  'water.compute.water-lost.output':
    'basis in sentences; by (valve-held, no-flow-seen, metered or flow-times-time); lowGal, bestGal, highGal (null when nobody can say how long at most); flow with its method, ends, accuracy and what limits it; methods, every estimate of the flow; limits; minutes; used, water for flushing and flow tests; claim with the figure used; challenges as code, params and sentence.',
  'water.compute.water-challenge.summary': 'Whether a hydrant can have given so much water in that time.',
  'water.compute.water-challenge.output':
    'flowGpm that it would take; limits, least first; challenges as code, params and sentence, none when nothing speaks against it.',
  'water.compute.formula.summary': 'One formula by its card: equation, sources, result.',
  'water.compute.formula.output':
    'title; equation; resultGpm, resultPsi, resultFt or result; sources, each with how far it was followed; notes.',

  'tightening.ring-title': 'Order of tightening, {bolts} bolts',
  'tightening.ring-description':
    'Number the {bolts} bolts clockwise from the top. Tighten them in this order: {order}.',
  'tightening.ring-inside': 'in the bolt: its turn',
  'tightening.ring-outside': 'beside it: its place',
  'tightening.number-bolts':
    'Number the {bolts} bolts clockwise, lubricate as the manual says, and run them all up by hand.',
  'tightening.pass-cross': 'Pass {number}, {percent}%{torque, select, none {} other {, {torque}}}: {order}.',
  'tightening.pass-round':
    'Pass {number}, once round clockwise at {percent}%{torque, select, none {} other {, {torque}}}, until no nut turns.',
  'tightening.torque': 'Torque {torque}, by {manual}, page {page}.',
  'tightening.torque-range': 'Torque {torque} to {to}, by {manual}, page {page}.',
  'tightening.see-manual':
    'This model’s record holds no torque: see the maker’s manual. None is assumed here.',
  'tightening.wrench': 'A wrench good to ±{percent}% brings between {least} and {most}.',
  'tightening.turns-to': '{from} to {to}',
  'tightening.back-off': 'Run the nut home and back it off {amount} of a turn ({manual}, page {page}).',
  'tightening.back-off-lock':
    'Run the nut home and back it off {amount} of a turn, until its lock lines up ({manual}, page {page}).',
  'tightening.compute.summary': 'Order, passes and torque for the bolts of a flange.',
  'tightening.compute.output':
    'steps in sentences; bolts; order and groups of places, clockwise from 1; passes with share, pattern, torque in both units (null without a record: see the maker’s manual) and order; torque with its manual and page; wrench, what its tolerance makes of it; cautions; svg of the ring with its description.',
  'problem.bolts-not-even':
    'There is a cross pattern for an even number of bolts only, and this is {bolts}. Count again, or see the maker’s manual.',
  'problem.bolts-differ-from-record':
    'The model’s record has {recorded} bolts in this joint. Count again, or correct the record.',
  'problem.not-a-whole-number': 'This must be a whole number.',

  'network.node': 'node {nodeId}',
  'network.hydrant': 'hydrant {hydrantId} (node {nodeId})',
  'network.said.available': 'By the model, {node} has {static} static and gives {flow} at {residual}.',
  'network.said.nothing':
    'By the model, {node} has {static} static, not above {residual}: nothing flows at that residual.',
  'network.said.at-test': 'At the flow of the field test the model leaves {pressure}.',
  'network.said.beyond-test': 'The model cannot give the flow of the field test.',
  'network.said.lowest':
    'The lowest pressure at a customer then is {pressure}, at node {nodeId}; {count, plural, =0 {none is} one {# node is} other {# nodes are}} below {residual}.',
  'network.said.field-agree': 'Field test {field}, model {model}: within what the readings allow.',
  'network.said.field-model-higher':
    'Field test {field}, model {model}, {percent}% more than measured: a valve may stand part closed, or the model’s pipes are too smooth.',
  'network.said.field-model-lower':
    'Field test {field}, model {model}, {percent}% less than measured: the model lacks a pipe or a source, or its pipes are too rough.',
  'network.said.closed': 'With {links} closed:',
  'network.said.before-after': '{node}: {before} before, {after} after.',
  'network.said.cut-off': '{node}: {before} before, cut off from every source after.',
  'network.said.cut-off-count':
    '{count, plural, =0 {No customer node is} one {# customer node is} other {# customer nodes are}} cut off.',
  'network.said.bound': 'By the model no more than {flow} can run out at {node}.',
  'network.warning.unbalanced': 'The model did not come to rest: do not rely on these figures.',
  'network.warning.unstable': 'The model’s solution may be unstable: do not rely on these figures.',
  'network.warning.disconnected': 'Part of the model is cut off from every source.',
  'network.warning.pumps': 'A pump runs beyond its curve in the model.',
  'network.warning.valves': 'A valve cannot hold its setting in the model.',
  'network.warning.negative-pressures':
    'The model has negative pressures somewhere: such a draw would pull dirty water in, and is not to be tried.',

  'network.compute.available-flow.summary':
    'Flow at a residual by the network model, beside the field test’s.',
  'network.compute.available-flow.output':
    'said in sentences; at, the node; staticPsi; flowGpm at residualPsi, 0 when the static is not above it; atTestFlowPsi; lowest pressure at a customer then; watched nodes before and after; field, the field test beside it, or null; warnings of the solver.',
  'network.compute.closing.summary':
    'What closing pipes or valves does to the pressure at hydrants, by the network model.',
  'network.compute.closing.output':
    'said in sentences; closed; watched, each with beforePsi and afterPsi, null when it is cut off; cutOffNodes; warnings of the solver.',
  'network.compute.water-bound.summary':
    'The most water that can run out at a hydrant, by the network model.',
  'network.compute.water-bound.output':
    'said in sentences; at; staticPsi; flowGpm into the open air; warnings of the solver.',

  'problem.place-needs-one':
    'Say where: a node, a hydrant of the list, a position, or a point on the model’s map.',
  'problem.no-such-node': 'The model has no node {nodeId}.',
  'problem.node-is-a-source': 'Node {nodeId} is a reservoir or tank. Name a junction.',
  'problem.no-such-link': 'The model has no pipe, pump or valve {linkId}.',
  'problem.no-node-near':
    'The nearest node, {nodeId}, is {distanceFt} away; at most {withinFt} is allowed. Check the position and the model’s coordinate system.',
  'problem.model-needs-crs':
    'Say in which coordinate system the model’s map is (map.crs), such as EPSG:2263.',
  'problem.model-has-no-map': 'The model’s nodes have no coordinates. Name the node.',
  'problem.hydrant-not-in-model':
    'No node is listed for hydrant {hydrantId}. Add it to map.nodeOf, or give the node or the position.',
  'problem.link-opens-again':
    'The model’s own controls open {linkId} again at once. Take it out of the controls in a copy of the model.',
  'problem.network-broken': 'This is not a network that EPANET can read: {detail}.',
  'problem.network-unsolved': 'EPANET could read this network and not solve it: {detail}.',
  'problem.network-empty':
    'There is no network in this file: it has no nodes. It should be an EPANET .inp file.',
  'problem.network-no-source': 'The network has no reservoir and no tank, so nothing feeds it.',
  'problem.network-too-slow':
    'The network was not solved within {seconds} seconds and was stopped. Check its time steps and duration, or ask for an earlier hour.',
  'problem.network-too-large': 'The network file is larger than {megabytes} MB.',

  'problem.start-of-flow-unknown':
    'Give the time of the strike, or when the water was first called in or seen.',
  'problem.end-of-flow-unknown':
    'Give the time at which the water was shut, or when it was last seen flowing.',
  'problem.seen-sound-after-call': 'It cannot have been seen sound after the first call. Check both times.',
  'problem.seen-shut-before-flowing':
    'It cannot have been seen shut before it was last seen flowing. Check both times.',
  'problem.shut-before-start': 'The water was shut before it began to flow. Check both times.',
  'problem.say-how-it-flowed': 'Say how the water flowed (leak, jet or full bore) and what was seen of it.',
  'problem.flow-needs-pressure':
    'Give the pressure in the main or the hydrant’s last flow test; without either, only a jet’s height or throw gives a flow.',
  'problem.full-bore-needs-lateral':
    'Give the size and length of the lateral: at full bore nothing else holds the water back.',
  'problem.wet-barrel-no-main-valve':
    'A wet barrel has no main valve that could hold. Say how the water flowed.',
  'problem.flow-though-valve-held':
    'The main valve is said to have held, and water was seen flowing. Say which of the two is right.',
  'problem.jet-needs-opening': 'Give the width of the opening; a height or a throw alone gives no flow.',
  'problem.drop-without-throw': 'Give how far the stream went; how far it fell alone gives no flow.',
  'problem.water-not-of-estimate':
    'This is not what the recorded observations come to ({expectedGal}). Open the form again and send it anew.',
  'problem.estimate-missing':
    'The estimate that belongs to these observations is missing. Open the form again.',
  'problem.challenge-needs-answer':
    'The figure is challenged. Change it, or answer the challenge by name: how could it be so all the same?',
  'problem.gallons-or-flow-and-minutes': 'Give the gallons, or the flow and the minutes.',
  'problem.gallons-given-twice': 'Give either the gallons or flow and minutes, not both.',
  'problem.figure-needs-reason': 'The claim uses the low figure. Say why another one is right.',
  'problem.own-figure-missing': 'Give the figure that is to be used.',
  'problem.own-figure-not-chosen': 'A figure of your own is used only when you choose it.',
  'problem.no-high-figure':
    'There is no high figure: nobody can say how long the water ran at most. Give when the hydrant was last seen sound and when the water was shut.',
  'problem.water-above-flow-test':
    '{waterGal} in {minutes} minutes is {flowGpm}. By its own flow test this hydrant gives no more than {limitGpm} with no pressure left. Check the figure and the times.',
  'problem.water-above-model':
    '{waterGal} in {minutes} minutes is {flowGpm}. By the network model this hydrant gives no more than {limitGpm}. Check the figure and the times.',
  'problem.water-above-frictionless':
    '{waterGal} in {minutes} minutes is {flowGpm}. No hydrant on such a lateral can give more than {limitGpm}, even with no friction at all. Check the figure and the times.',
  'problem.water-above-full-bore':
    'What was seen comes to {flowGpm}, but the lateral open at full bore passes {limitGpm} at most. Check the height or throw and the width of the opening.',
  'problem.methods-disagree':
    'What was seen gives two flows that do not fit: {oneGpm} and {otherGpm}. The first is used. Check the height or throw, the width of the opening and the pressure.',
  'problem.claim-though-valve-held':
    'Water is claimed although the hydrant’s main valve held. An insurer will object; claim none, or say why.',
  'problem.metered-though-valve-held':
    'A meter shows water lost although the hydrant’s main valve is said to have held. Say which of the two is right.',
} as const;
